using System.Text;
using Fretlore.Exchange.Import;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>One line of a text as it is read: plain signs, blanks for tabs, nothing at its end.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Text">The line; each character stands in the column it is seen in.</param>
/// <param name="Source">The line as it was.</param>
internal sealed record TabLine(int Number, string Text, string Source)
{
    private const int TabStop = 8;

    public bool IsBlank => Text.Length == 0;

    /// <summary>The column in the source, from 1, of a place in <see cref="Text"/>.</summary>
    public int SourceColumn(int index)
    {
        var at = 0;
        for (var i = 0; i < Source.Length; i++)
        {
            if (at >= index) return i + 1;
            at = Source[i] == '\t' ? (at / TabStop + 1) * TabStop : at + 1;
        }
        return Source.Length + 1;
    }

    /// <summary>A line with the signs that word processors and screens put for dashes, bars and blanks made plain.</summary>
    public static TabLine Of(int number, string source)
    {
        var text = new StringBuilder(source.Length);
        foreach (var c in source)
        {
            if (c == '\t') text.Append(' ', TabStop - text.Length % TabStop);
            else text.Append(Plain(c));
        }
        return new TabLine(number, text.ToString().TrimEnd(), source);
    }

    private static char Plain(char c) => c switch
    {
        '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2015' or '\u2212' or '\u2500' or '\u2501' or '\uFF0D' or '\u00AD' or '\u00AF' => '-',
        '\u2502' or '\u2503' or '\u00A6' or '\u2016' or '\u2551' or '\uFF5C' or '\u01C0' or '\u2223' => '|',
        '\u00A0' or '\u2002' or '\u2003' or '\u2007' or '\u2009' or '\u3000' => ' ',
        '\u223C' or '\u301C' or '\uFF5E' or '\u02DC' => '~',
        '\u266D' => 'b',
        '\u266F' => '#',
        '\u2019' or '\u2018' => '\'',
        '\u201C' or '\u201D' => '"',
        '\u00D7' => 'x',
        _ when char.IsControl(c) => ' ',
        _ => c,
    };
}

/// <summary>A file as lines of text.</summary>
internal static class TabText
{
    private const int MostLines = 100_000;
    private const int LongestLine = 20_000;

    /// <summary>The lines of a file, and whether its encoding had to be guessed.</summary>
    /// <exception cref="RefusedFileException">It is no text, or more of it than is taken.</exception>
    public static (List<TabLine> Lines, bool EncodingTaken) Read(byte[] file)
    {
        var (text, taken) = Decode(file);
        if (text.Contains('\0', StringComparison.Ordinal)) throw new RefusedFileException("The file is no text.", "Import MusicXML, MIDI, or plain-text tab saved as UTF-8.");
        var lines = new List<TabLine>();
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            if (lines.Count == MostLines || line.Length > LongestLine) throw new RefusedFileException("The text is longer than any tab that is taken.", "Import its songs one by one.");
            lines.Add(TabLine.Of(lines.Count + 1, line.ToString()));
        }
        return (lines, taken);
    }

    // UTF-8 and UTF-16 as their marks say, else UTF-8 where it is sound; what else there is, is mostly Western European.
    private static (string Text, bool Taken) Decode(byte[] file)
    {
        if (file is [0xFF, 0xFE, ..]) return (Encoding.Unicode.GetString(file.AsSpan(2)), false);
        if (file is [0xFE, 0xFF, ..]) return (Encoding.BigEndianUnicode.GetString(file.AsSpan(2)), false);
        var bytes = file is [0xEF, 0xBB, 0xBF, ..] ? file.AsSpan(3) : file;
        try
        {
            return (new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes), false);
        }
        catch (DecoderFallbackException)
        {
            return (Encoding.Latin1.GetString(bytes), true);
        }
    }
}
