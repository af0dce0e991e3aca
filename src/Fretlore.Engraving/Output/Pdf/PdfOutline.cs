using System.Globalization;
using System.Text;
using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Output.Pdf;

/// <summary>Adds bookmarks to a PDF.</summary>
/// <remarks>Source: ISO 32000-1, 12.3.3 "Document outline" and 12.3.2.2 "Explicit destinations".</remarks>
internal static class PdfOutline
{
    /// <param name="pdf">The file.</param>
    /// <param name="document">Whose bookmarks to add; the file's pages are its pages.</param>
    /// <param name="scale">Points a staff space takes, for each page.</param>
    public static void Add(PdfFile pdf, Document document, Func<DrawnPage, double> scale)
    {
        if (document.Bookmarks.Count == 0) return;
        var (first, pages) = (pdf.Free, pdf.Pages);
        var last = first + document.Bookmarks.Count;
        pdf.AddTo(pdf.Root, $"/Outlines {first} 0 R\n/PageMode /UseOutlines");
        pdf.Put(first, $"<</Type /Outlines\n/First {first + 1} 0 R\n/Last {last} 0 R\n/Count {document.Bookmarks.Count}>>");
        for (var i = 0; i < document.Bookmarks.Count; i++)
        {
            var bookmark = document.Bookmarks[i];
            var item = new StringBuilder("<</Title ").Append(PdfFile.TextOf(bookmark.Title)).Append(CultureInfo.InvariantCulture, $"\n/Parent {first} 0 R");
            if (i > 0) item.Append(CultureInfo.InvariantCulture, $"\n/Prev {first + i} 0 R");
            if (first + i + 1 < last) item.Append(CultureInfo.InvariantCulture, $"\n/Next {first + i + 2} 0 R");
            var page = document.Pages[bookmark.Page];
            item.Append(CultureInfo.InvariantCulture, $"\n/Dest [{pages[bookmark.Page]} 0 R /XYZ 0 {(page.Height - bookmark.At.Y) * scale(page):0.###} null]>>");
            pdf.Put(first + i + 1, item.ToString());
        }
    }
}
