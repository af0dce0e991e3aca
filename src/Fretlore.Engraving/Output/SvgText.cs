using System.Globalization;
using System.Text;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts.Shaping;

namespace Fretlore.Engraving.Output;

/// <summary>SVG as it is written: UTF-8 in one buffer that is used again for the next page.</summary>
/// <remarks>Most of a page is numbers, so they are formatted in place; a long song has pages by the megabyte.</remarks>
internal sealed class SvgText
{
    private const string Special = "<>&\"";

    private const int LongestCharacter = 3; // bytes of one UTF-16 unit

    private byte[] bytes = new byte[512];
    private int length;

    public ReadOnlySpan<byte> Written => bytes.AsSpan(0, length);

    /// <summary>Forgets what was written; the buffer stays.</summary>
    public void Clear() => length = 0;

    public override string ToString() => Encoding.UTF8.GetString(Written);

    /// <param name="character">One of ASCII.</param>
    public SvgText Append(char character)
    {
        if (length == bytes.Length) MakeRoom(1);
        bytes[length++] = checked((byte)character);
        return this;
    }

    /// <param name="text">In UTF-8.</param>
    public SvgText Append(ReadOnlySpan<byte> text)
    {
        MakeRoom(text.Length);
        text.CopyTo(bytes.AsSpan(length));
        length += text.Length;
        return this;
    }

    public SvgText Append(ReadOnlySpan<char> text)
    {
        MakeRoom(text.Length * LongestCharacter);
        length += Encoding.UTF8.GetBytes(text, bytes.AsSpan(length));
        return this;
    }

    public SvgText Append(long number, ReadOnlySpan<char> format = default)
    {
        const int Longest = 20;
        MakeRoom(Longest);
        number.TryFormat(bytes.AsSpan(length), out var written, format, CultureInfo.InvariantCulture);
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
        var rest = PlainLine.Of(text).AsSpan();
        for (var special = rest.IndexOfAny(Special); special >= 0; special = rest.IndexOfAny(Special))
        {
            Append(rest[..special]);
            Append(rest[special] switch
            {
                '<' => "&lt;"u8,
                '>' => "&gt;"u8,
                '&' => "&amp;"u8,
                _ => "&quot;"u8,
            });
            rest = rest[(special + 1)..];
        }

        return Append(rest);
    }

    private void MakeRoom(int count)
    {
        if (count > bytes.Length - length) Array.Resize(ref bytes, Math.Max(bytes.Length * 2, length + count));
    }
}
