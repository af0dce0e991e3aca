using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using SkiaSharp;

namespace Fretlore.Engraving.Output;

/// <summary>Writes pages as one PDF: vector drawing, its fonts inside and cut to what is used, its text to be searched.</summary>
/// <remarks>It carries no date, so that the same document gives the same bytes. It is not tagged: the drawing library has no way to mark content for a structure tree.</remarks>
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
        using (var pdf = SKDocument.CreatePdf(pages, Metadata(document)))
        {
            foreach (var page in document.Pages)
            {
                var scale = Scale(page);
                var canvas = pdf.BeginPage((float)(page.Width * scale), (float)(page.Height * scale));
                canvas.Scale((float)scale);
                painter.Paint(canvas, page.Marks.AsSpan());
                pdf.EndPage();
            }

            pdf.Close();
        }

        to.Write(PdfOutline.Append(pages.ToArray(), document, Scale));
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
