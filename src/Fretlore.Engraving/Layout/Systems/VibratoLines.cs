using Fretlore.Engraving.Fonts;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Wavy lines above a row for vibrato, of two widths.</summary>
internal sealed class VibratoLines(Pen pen)
{
    private const int FewestWaves = 3;

    private readonly List<(int Glyph, double Left, int Count)> lines = [];

    /// <param name="width">Normal or wide.</param>
    /// <param name="left">Where it begins.</param>
    /// <param name="right">Where the next thing on the row begins.</param>
    public void Add(VibratoWidth width, double left, double right)
    {
        var glyph = width == VibratoWidth.Wide ? Smufl.GuitarWideVibratoStroke : Smufl.GuitarVibratoStroke;
        var count = Math.Max(FewestWaves, (int)((right - 0.6 - left) / pen.Ink.Music.AdvanceOf(glyph)));
        // Notes of a chord shake together.
        if (!lines.Contains((glyph, left, count))) lines.Add((glyph, left, count));
    }

    /// <summary>Each as near to the row as it can be; a common height would lift them all above the highest bend.</summary>
    public void Draw()
    {
        foreach (var (glyph, left, count) in lines)
        {
            var step = pen.Ink.Music.AdvanceOf(glyph);
            var right = pen.Ink.Glyph(glyph, left + (count - 1) * step, 0).Right;
            var y = Math.Min(pen.Skyline.Top(left, right) - HouseStyle.SkylineGap, -0.7) - pen.Ink.Glyph(glyph).Bottom;
            for (var i = 0; i < count; i++) pen.Glyph(glyph, left + i * step, y);
        }
    }
}
