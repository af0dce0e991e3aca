using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Output.Pdf;
using SkiaSharp;

namespace Fretlore.Engraving.Output;

/// <summary>Writes pages as one PDF: vector drawing, its fonts inside and cut to what is used, its text to be searched and read aloud in order.</summary>
/// <remarks>It carries no date, so that the same document gives the same bytes. It is tagged for screen readers: see <see cref="PdfTags"/>.</remarks>
public static class PdfWriter
{
    private const double PointsPerMillimetre = 72 / 25.4;

    /// <summary>Writes to a stream, which stays open.</summary>
    /// <returns>Characters that had to be drawn as boxes.</returns>
    public static MissingCharacters Write(Document document, FontLibrary fonts, Stream to)
    {
        var use = FontUse.Of(document, fonts);
        using var canvasFonts = CanvasFonts.Cut(use, fonts.MusicSource);
        using var painter = new CanvasPainter(fonts, canvasFonts);
        using var pages = new MemoryStream();
        var parts = document.Pages.Select((page, i) => new PageParts(fonts, document.Bookmarks.Where(b => b.Page == i).Select(b => b.Title).ToHashSet(), isFirst: i == 0).Of(page)).ToArray();
        using (var pdf = SKDocument.CreatePdf(pages, Metadata(document)))
        {
            for (var i = 0; i < parts.Length; i++)
            {
                var page = document.Pages[i];
                var scale = Scale(page);
                var canvas = pdf.BeginPage((float)(page.Width * scale), (float)(page.Height * scale));
                canvas.Scale((float)scale);
                foreach (var part in parts[i])
                {
                    painter.Sign(canvas);
                    painter.Paint(canvas, part.Marks.AsSpan());
                }
                pdf.EndPage();
            }

            pdf.Close();
        }

        var file = PdfFile.Read(pages.ToArray());
        PdfTags.Add(file, parts, document.Language);
        PdfOutline.Add(file, document, Scale);
        file.WriteTo(to);
        return new MissingCharacters([.. use.Missing]);
    }

    /// <summary>Points a staff space takes.</summary>
    private static double Scale(DrawnPage page) => page.StaffSpace * PointsPerMillimetre;

    private static SKDocumentPdfMetadata Metadata(Document document) => new()
    {
        Title = document.Title,
        Author = document.Author,
        Subject = document.Subject,
        Creator = "Fretlore",
        Producer = "Fretlore",
        RasterDpi = SKDocumentPdfMetadata.DefaultRasterDpi,
        EncodingQuality = SKDocumentPdfMetadata.DefaultEncodingQuality,
    };
}
