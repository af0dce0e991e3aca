using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace Fretlore.Engraving.Output.Pdf;

/// <summary>The objects of a PDF that the drawing library has written, to be changed and added to: it has no way to write bookmarks and tags.</summary>
/// <remarks>
/// Source: ISO 32000-1, 7.3.8 "Stream objects" and 7.5 "File structure". It reads only files with a classic cross-reference table, which the drawing
/// library writes. The rest of the file is kept byte by byte.
/// </remarks>
internal sealed partial class PdfFile
{
    private readonly byte[] header;
    private readonly SortedDictionary<int, byte[]> objects = [];
    private readonly string info;

    private PdfFile(byte[] header, int root, string info) => (this.header, Root, this.info) = (header, root, info);

    /// <summary>The catalog's number.</summary>
    public int Root { get; }

    /// <summary>The numbers of its pages, first to last; the drawing library numbers them in their order.</summary>
    public int[] Pages => [.. objects.Where(o => PageObject().IsMatch(Encoding.Latin1.GetString(o.Value, 0, Math.Min(o.Value.Length, 64)))).Select(o => o.Key)];

    /// <summary>A number that no object has yet.</summary>
    public int Free => objects.Keys.Last() + 1;

    public static PdfFile Read(byte[] pdf)
    {
        var file = Encoding.Latin1.GetString(pdf);
        var table = int.Parse(StartOfTable().Match(file, file.LastIndexOf("startxref", StringComparison.Ordinal)).Groups[1].Value, CultureInfo.InvariantCulture);
        var trailer = file[file.IndexOf("trailer", table, StringComparison.Ordinal)..];
        var heading = TableHeading().Match(file, table);
        const int entry = 20;
        var offsets = Enumerable.Range(1, int.Parse(heading.Groups[1].Value, CultureInfo.InvariantCulture) - 1)
            .Select(number => (Number: number, Offset: int.Parse(file.AsSpan(heading.Index + heading.Length + number * entry, 10), NumberStyles.None, CultureInfo.InvariantCulture)))
            .OrderBy(o => o.Offset).ToArray();
        var read = new PdfFile(pdf[..offsets[0].Offset], int.Parse(Catalog().Match(trailer).Groups[1].Value, CultureInfo.InvariantCulture), Info().Match(trailer).Value);
        for (var i = 0; i < offsets.Length; i++) read.objects[offsets[i].Number] = pdf[offsets[i].Offset..(i + 1 < offsets.Length ? offsets[i + 1].Offset : table)];
        return read;
    }

    /// <summary>Sets an object's content, or adds an object.</summary>
    public void Put(int number, string content) => objects[number] = Encoding.Latin1.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{number} 0 obj\n{content}\nendobj\n"));

    /// <summary>Adds entries to an object that is a dictionary.</summary>
    public void AddTo(int number, string entries)
    {
        var text = Encoding.Latin1.GetString(objects[number]);
        var start = text.IndexOf("<<", StringComparison.Ordinal);
        Put(number, $"{text[start..text.LastIndexOf(">>", StringComparison.Ordinal)]}\n{entries}>>");
    }

    /// <summary>The number of the stream that draws a page.</summary>
    public int ContentsOf(int page) => int.Parse(Contents().Match(Encoding.Latin1.GetString(objects[page])).Groups[1].Value, CultureInfo.InvariantCulture);

    /// <summary>What a stream holds, as one character a byte.</summary>
    public string Stream(int number)
    {
        var bytes = objects[number];
        var opening = StreamOpening().Match(Encoding.Latin1.GetString(bytes));
        var length = int.Parse(Length().Match(opening.Value).Groups[1].Value, CultureInfo.InvariantCulture);
        var (start, isPacked) = (opening.Length, opening.Value.Contains("/FlateDecode", StringComparison.Ordinal));
        if (!isPacked) return Encoding.Latin1.GetString(bytes, start, length);
        using var unpacked = new MemoryStream();
        using (var packed = new ZLibStream(new MemoryStream(bytes, start, length), CompressionMode.Decompress)) packed.CopyTo(unpacked);
        return Encoding.Latin1.GetString(unpacked.GetBuffer(), 0, (int)unpacked.Length);
    }

    public void PutStream(int number, string content)
    {
        using var packed = new MemoryStream();
        using (var packer = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true)) packer.Write(Encoding.Latin1.GetBytes(content));
        var opening = string.Create(CultureInfo.InvariantCulture, $"{number} 0 obj\n<</Filter /FlateDecode\n/Length {packed.Length}>> stream\n");
        objects[number] = [.. Encoding.Latin1.GetBytes(opening), .. packed.ToArray(), .. "\nendstream\nendobj\n"u8];
    }

    public void WriteTo(Stream to)
    {
        using var file = new MemoryStream();
        file.Write(header);
        var size = Free;
        var table = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"xref\n0 {size}\n0000000000 65535 f \n"));
        for (var number = 1; number < size; number++)
        {
            table.Append(CultureInfo.InvariantCulture, $"{file.Length:D10} 00000 n \n");
            file.Write(objects[number]);
        }
        var start = file.Length;
        table.Append(CultureInfo.InvariantCulture, $"trailer\n<</Size {size}\n/Root {Root} 0 R\n{info}>>\nstartxref\n{start}\n%%EOF\n");
        file.Write(Encoding.Latin1.GetBytes(table.ToString()));
        file.Position = 0;
        file.CopyTo(to);
    }

    /// <summary>A text string of any characters.</summary>
    public static string TextOf(string text)
    {
        var line = Fonts.Shaping.PlainLine.Of(text);
        if (line.All(c => c is >= ' ' and <= '~')) return $"({line.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("(", "\\(", StringComparison.Ordinal).Replace(")", "\\)", StringComparison.Ordinal)})";
        return $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(line))}>";
    }

    [GeneratedRegex(@"\Gstartxref\s+(\d+)")]
    private static partial Regex StartOfTable();

    [GeneratedRegex(@"\Gxref\s+0 (\d+)\s*?\n")]
    private static partial Regex TableHeading();

    [GeneratedRegex(@"^\d+ 0 obj\s+<<\s*/Type /Page\s")]
    private static partial Regex PageObject();

    [GeneratedRegex(@"/Root (\d+) 0 R")]
    private static partial Regex Catalog();

    [GeneratedRegex(@"/Info \d+ 0 R")]
    private static partial Regex Info();

    [GeneratedRegex(@"/Contents (\d+) 0 R")]
    private static partial Regex Contents();

    [GeneratedRegex(@"^\d+ 0 obj\s+<<[^>]*>>\s*stream\r?\n")]
    private static partial Regex StreamOpening();

    [GeneratedRegex(@"/Length (\d+)")]
    private static partial Regex Length();
}
