using HarfBuzzSharp;
using Buffer = HarfBuzzSharp.Buffer;

namespace Fretlore.Engraving.Fonts.Shaping;

/// <summary>Shapes text that one font has all characters of.</summary>
internal static class RunShaper
{
    public static GlyphRun Shape(FontSource source, string text, ref double x)
    {
        using var buffer = new Buffer();
        buffer.AddUtf16(text);
        buffer.GuessSegmentProperties();
        source.Font.Shape(buffer, Features());
        var infos = buffer.GetGlyphInfoSpan();
        var positions = buffer.GetGlyphPositionSpan();
        var left = x;
        double em = source.UnitsPerEm;
        var glyphs = new ushort[infos.Length];
        var places = new Place[infos.Length];
        for (var i = 0; i < infos.Length; i++)
        {
            glyphs[i] = (ushort)infos[i].Codepoint;
            places[i] = new Place(x + positions[i].XOffset / em, -positions[i].YOffset / em);
            x += positions[i].XAdvance / em;
        }

        return new GlyphRun(source, left, glyphs, places, text);
    }

    /// <summary>Sets the accidentals of a text, which need no shaping but their own glyphs.</summary>
    public static GlyphRun Accidentals(FontSource music, string text, ref double x)
    {
        var left = x;
        var glyphs = new List<ushort>();
        var places = new List<Place>();
        foreach (var rune in text.EnumerateRunes())
        {
            if (TextAccidentals.GlyphFor(rune.Value) is not { } accidental) continue;
            var glyph = music.GlyphOf(accidental);
            glyphs.Add(glyph);
            places.Add(new Place(x, 0));
            x += music.AdvanceOf(glyph) / (double)music.UnitsPerEm;
        }

        return new GlyphRun(music, left, [.. glyphs], [.. places], text, IsAccidentals: true);
    }

    /// <summary>Whether a text is of a script written from right to left.</summary>
    public static bool RunsLeftwards(string text)
    {
        using var buffer = new Buffer();
        buffer.AddUtf16(text);
        buffer.GuessSegmentProperties();
        return buffer.Direction == Direction.RightToLeft;
    }

    private static Feature[] Features() =>
    [
        new Feature(Tag.Parse("kern"), 1),
        new Feature(Tag.Parse("liga"), 0),
        new Feature(Tag.Parse("clig"), 0),
    ];
}
