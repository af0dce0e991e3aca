using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts.Shaping;

namespace Fretlore.Engraving.Output;

/// <summary>SVG as it is written: characters in one buffer that is used again for the next page.</summary>
/// <remarks>Most of a page is numbers, so they are formatted in place; a long song has pages by the megabyte.</remarks>
internal sealed class SvgText
{
    private char[] characters = new char[512];
    private int length;

    public ReadOnlySpan<char> Written => characters.AsSpan(0, length);

    /// <summary>Forgets what was written; the buffer stays.</summary>
    public void Clear() => length = 0;

    public override string ToString() => Written.ToString();

    public SvgText Append(char character)
    {
        if (length == characters.Length) MakeRoom(1);
        characters[length++] = character;
        return this;
    }

    public SvgText Append(ReadOnlySpan<char> text)
    {
        MakeRoom(text.Length);
        text.CopyTo(characters.AsSpan(length));
        length += text.Length;
        return this;
    }

    public SvgText Append(long number, ReadOnlySpan<char> format = default)
    {
        const int Longest = 20;
        MakeRoom(Longest);
        number.TryFormat(characters.AsSpan(length), out var written, format, CultureInfo.InvariantCulture);
        length += written;
        return this;
    }

    /// <summary>A number as SVG has them: a point for decimals, at most three of them, no zeros behind.</summary>
    public SvgText Number(double value)
    {
        if (!double.IsFinite(value)) throw new ArgumentOutOfRangeException(nameof(value), value, "A mark stands at no finite place.");
        var thousandths = (long)Math.Round(value * 1000, MidpointRounding.AwayFromZero);
        if (thousandths < 0)
        {
            Append('-');
            thousandths = -thousandths;
        }

        var (whole, part) = Math.DivRem(thousandths, 1000);
        Append(whole);
        if (part == 0) return this;
        Append('.').Append((char)('0' + part / 100));
        if (part % 100 == 0) return this;
        Append((char)('0' + part / 10 % 10));
        if (part % 10 != 0) Append((char)('0' + part % 10));
        return this;
    }

    /// <summary>A place with a space between its numbers.</summary>
    public SvgText Place(Point point) => Number(point.X).Append(' ').Number(point.Y);

    /// <summary>Text as XML content or a quoted attribute may hold it.</summary>
    public SvgText Escaped(string text)
    {
        foreach (var character in PlainLine.Of(text))
        {
            _ = character switch
            {
                '<' => Append("&lt;"),
                '>' => Append("&gt;"),
                '&' => Append("&amp;"),
                '"' => Append("&quot;"),
                _ => Append(character),
            };
        }

        return this;
    }

    private void MakeRoom(int count)
    {
        if (count > characters.Length - length) Array.Resize(ref characters, Math.Max(characters.Length * 2, length + count));
    }
}
