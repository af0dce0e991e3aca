using System.Collections.Frozen;
using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Fonts;

/// <summary>The music font's measures, as its own metadata gives them.</summary>
/// <remarks>Asking for a glyph that <see cref="Smufl"/> does not list is a bug and throws.</remarks>
internal sealed class MusicFont : IMusicFont
{
    private readonly FrozenDictionary<int, GlyphMeasures> glyphs;
    private readonly FrozenDictionary<string, double> defaults;

    public MusicFont(FrozenDictionary<int, GlyphMeasures> glyphs, FrozenDictionary<string, double> defaults)
    {
        this.glyphs = glyphs;
        this.defaults = defaults;
    }

    public Box InkOf(int codePoint) => Of(codePoint).Ink;

    public double AdvanceOf(int codePoint) => Of(codePoint).Advance;

    public Point? AnchorOf(int codePoint, string anchor) => Of(codePoint).Anchors.TryGetValue(anchor, out var point) ? point : null;

    public double Default(string name) =>
        defaults.TryGetValue(name, out var value) ? value : throw new ArgumentException($"The music font has no default '{name}'.", nameof(name));

    private GlyphMeasures Of(int codePoint) =>
        glyphs.TryGetValue(codePoint, out var glyph)
            ? glyph
            : throw new ArgumentException($"The glyph U+{codePoint:X4} is not in the table of glyphs.", nameof(codePoint));
}

/// <summary>One glyph's measures in staff spaces, y downwards.</summary>
internal sealed record GlyphMeasures(double Advance, Box Ink, FrozenDictionary<string, Point> Anchors);
