using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Output;

/// <summary>Adds bookmarks to a finished PDF, as an update appended to it; the drawing library has no way to write them.</summary>
/// <remarks>
/// Source: ISO 32000-1, 7.5.6 "Incremental updates", 12.3.3 "Document outline" and 12.3.2.2 "Explicit destinations". It reads only files with a
/// classic cross-reference table, which the drawing library writes.
/// </remarks>
internal static partial class PdfOutline
{
    /// <param name="pdf">The file.</param>
    /// <param name="document">Whose bookmarks to add; the file's pages are its pages.</param>
    /// <param name="scale">Points a staff space takes, for each page.</param>
    public static byte[] Append(byte[] pdf, Document document, Func<DrawnPage, double> scale)
    {
        if (document.Bookmarks.Count == 0) return pdf;
        var file = Encoding.Latin1.GetString(pdf);
        var table = int.Parse(StartOfTable().Match(file, file.LastIndexOf("startxref", StringComparison.Ordinal)).Groups[1].Value, CultureInfo.InvariantCulture);
        var offsets = Offsets(file, table);
        var trailer = file[file.IndexOf("trailer", table, StringComparison.Ordinal)..];
        var root = int.Parse(Root().Match(trailer).Groups[1].Value, CultureInfo.InvariantCulture);
        var info = Info().Match(trailer).Value;
        var pages = PageNumbers(file, offsets);
        var first = offsets.Length;

        var update = new Update(pdf.Length);
        update.Add(root, Catalog(file, offsets[root]) + $"\n/Outlines {first} 0 R\n/PageMode /UseOutlines>>");
        var last = first + document.Bookmarks.Count;
        update.Add(first, $"<</Type /Outlines\n/First {first + 1} 0 R\n/Last {last} 0 R\n/Count {document.Bookmarks.Count}>>");
        for (var i = 0; i < document.Bookmarks.Count; i++)
        {
            var bookmark = document.Bookmarks[i];
            var item = new StringBuilder("<</Title ").Append(Hexadecimal(bookmark.Title)).Append(CultureInfo.InvariantCulture, $"\n/Parent {first} 0 R");
            if (i > 0) item.Append(CultureInfo.InvariantCulture, $"\n/Prev {first + i} 0 R");
            if (first + i + 1 < last) item.Append(CultureInfo.InvariantCulture, $"\n/Next {first + i + 2} 0 R");
            var page = document.Pages[bookmark.Page];
            item.Append(CultureInfo.InvariantCulture, $"\n/Dest [{pages[bookmark.Page]} 0 R /XYZ 0 {(page.Height - bookmark.At.Y) * scale(page):0.###} null]>>");
            update.Add(first + i + 1, item.ToString());
        }

        return [.. pdf, .. update.Finish(last + 1, $"/Root {root} 0 R\n{info}", table)];
    }

    /// <summary>Where each object begins, by its number.</summary>
    private static int[] Offsets(string file, int table)
    {
        var heading = TableHeading().Match(file, table);
        var count = int.Parse(heading.Groups[1].Value, CultureInfo.InvariantCulture);
        var first = heading.Index + heading.Length;
        const int entry = 20;
        return [.. Enumerable.Range(0, count).Select(number => int.Parse(file.AsSpan(first + number * entry, 10), NumberStyles.None, CultureInfo.InvariantCulture))];
    }

    /// <summary>The objects that are pages; the drawing library numbers them in their order.</summary>
    private static int[] PageNumbers(string file, int[] offsets) =>
        [.. Enumerable.Range(1, offsets.Length - 1).Where(number => PageObject().IsMatch(file, offsets[number]))];

    /// <summary>The catalog's dictionary without its closing brackets.</summary>
    private static string Catalog(string file, int offset)
    {
        var start = file.IndexOf("<<", offset, StringComparison.Ordinal);
        var end = file.IndexOf("endobj", start, StringComparison.Ordinal);
        return file[start..file.LastIndexOf(">>", end, StringComparison.Ordinal)];
    }

    private static string Hexadecimal(string text) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(Fonts.Shaping.PlainLine.Of(text)))}>";

    [GeneratedRegex(@"\Gstartxref\s+(\d+)")]
    private static partial Regex StartOfTable();

    [GeneratedRegex(@"\Gxref\s+0 (\d+)\s*?\n")]
    private static partial Regex TableHeading();

    [GeneratedRegex(@"\G\d+ 0 obj\s+<<\s*/Type /Page\s")]
    private static partial Regex PageObject();

    [GeneratedRegex(@"/Root (\d+) 0 R")]
    private static partial Regex Root();

    [GeneratedRegex(@"/Info \d+ 0 R")]
    private static partial Regex Info();

    /// <summary>Objects to append, with the table that finds them.</summary>
    private sealed class Update(int start)
    {
        private readonly StringBuilder body = new("\n");
        private readonly List<(int Number, int Offset)> places = [];

        public void Add(int number, string content)
        {
            places.Add((number, start + body.Length));
            body.Append(CultureInfo.InvariantCulture, $"{number} 0 obj\n{content}\nendobj\n");
        }

        public byte[] Finish(int size, string trailer, int previous)
        {
            var table = start + body.Length;
            body.Append("xref\n");
            foreach (var (number, offset) in places) body.Append(CultureInfo.InvariantCulture, $"{number} 1\n{offset:D10} 00000 n \n");
            body.Append(CultureInfo.InvariantCulture, $"trailer\n<</Size {size}\n{trailer}\n/Prev {previous}>>\nstartxref\n{table}\n%%EOF\n");
            return Encoding.Latin1.GetBytes(body.ToString());
        }
    }
}
