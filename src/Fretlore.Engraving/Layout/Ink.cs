using System.Buffers;
using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Layout;

/// <summary>Measures what marks will ink, from the fonts they are drawn with.</summary>
internal sealed class Ink(IMusicFont music, ITextMetrics text)
{
    private static readonly SearchValues<char> Deep = SearchValues.Create("gjpqyQ,;()[]/|");
    private static readonly SearchValues<char> Tall = SearchValues.Create("()[]/|");

    private readonly Dictionary<int, Box> boxes = [];
    private readonly Dictionary<(string, Face), double> widths = [];

    public IMusicFont Music => music;

    public double StaffLine { get; } = music.Default("staffLineThickness");

    public double LedgerLine { get; } = music.Default("legerLineThickness");

    public double LedgerExtension { get; } = music.Default("legerLineExtension");

    public double Stem { get; } = music.Default("stemThickness");

    public double Beam { get; } = music.Default("beamThickness");

    public double ThinBar { get; } = music.Default("thinBarlineThickness");

    public double ThickBar { get; } = music.Default("thickBarlineThickness");

    public double BarSeparation { get; } = music.Default("barlineSeparation");

    public double TieEnd { get; } = music.Default("tieEndpointThickness");

    public double TieMiddle { get; } = music.Default("tieMidpointThickness");

    public double Hairline { get; } = music.Default("tupletBracketThickness");

    public Box Glyph(int codePoint)
    {
        if (!boxes.TryGetValue(codePoint, out var box)) boxes[codePoint] = box = music.InkOf(codePoint);
        return box;
    }

    /// <summary>The ink of a glyph at a place.</summary>
    public Box Glyph(int codePoint, double x, double y, double scale = 1)
    {
        var box = Glyph(codePoint);
        return new Box(x + box.Left * scale, y + box.Top * scale, x + box.Right * scale, y + box.Bottom * scale);
    }

    public double GlyphWidth(int codePoint) => Glyph(codePoint).Right;

    public double TextWidth(string value, Face face, double size)
    {
        if (value.Length > 12) return text.WidthOf(value, face, size);
        if (!widths.TryGetValue((value, face), out var width)) widths[(value, face)] = width = text.WidthOf(value, face, 1);
        return width * size;
    }

    public double DigitHeight(Face face, double size) => text.DigitHeight(face, size);

    public double CapHeight(Face face, double size) => text.CapHeight(face, size);

    public Box Text(Text mark)
    {
        var width = TextWidth(mark.Value, mark.Face, mark.Size);
        var left = mark.Anchor switch { Anchor.Start => mark.At.X, Anchor.Middle => mark.At.X - width / 2, _ => mark.At.X - width };
        var deep = mark.Value.AsSpan().IndexOfAny(Deep) >= 0;
        var top = mark.At.Y - (mark.Value.AsSpan().IndexOfAny(Tall) >= 0 ? text.Ascent(mark.Face, mark.Size) * 0.85 : text.CapHeight(mark.Face, mark.Size));
        return new Box(left, top, left + width, mark.At.Y + (deep ? text.Descent(mark.Face, mark.Size) * 0.9 : 0));
    }
}
