using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Engraving.Layout.Lettering;

/// <summary>A line of text whose sharps and flats are drawn with the music font, since few text fonts have good ones.</summary>
internal static class MixedText
{
    /// <summary>A note name's <c>#</c> and <c>b</c> as the signs this class draws.</summary>
    public static string SignsOf(string noteName) => noteName.Length < 2 ? noteName
        : noteName[0] + noteName[1..].Replace('#', '\u266F').Replace('b', '\u266D');

    public static double Width(Ink ink, string value, double size, Face face) => Run(ink, value, size, face, null, 0, 0);

    /// <returns>The width drawn.</returns>
    public static double Draw(Pen pen, string value, double x, double y, double size, Face face) => Run(pen.Ink, value, size, face, pen, x, y);

    private static double Run(Ink ink, string value, double size, Face face, Pen? pen, double x, double y)
    {
        var start = x;
        for (var from = 0; from < value.Length;)
        {
            var sign = value.AsSpan(from).IndexOfAny('\u266F', '\u266D');
            var text = sign < 0 ? value[from..] : value.Substring(from, sign);
            if (text.Length > 0)
            {
                pen?.Text(text, x, y, size, face);
                x += ink.TextWidth(text, face, size);
            }
            from += text.Length;
            if (sign < 0) break;
            var glyph = value[from] == '\u266F' ? Smufl.CsymAccidentalSharp : Smufl.CsymAccidentalFlat;
            var scale = size / 4 * 0.95;
            pen?.Glyph(glyph, x + 0.04, y, scale);
            x += ink.Music.AdvanceOf(glyph) * scale + 0.08;
            from++;
        }
        return x - start;
    }
}
