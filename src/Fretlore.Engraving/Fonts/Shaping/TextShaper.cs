using System.Collections.Concurrent;
using System.Text;
using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Fonts.Shaping;

/// <summary>Turns lines of text into placed glyphs: kerning on, ligatures off so that each letter can be searched for.</summary>
/// <remarks>
/// A character that the face lacks is taken from the music font's accidentals, then from the other faces, then from a font of the system. Whole
/// runs of right-to-left script are shaped as such, but mixed lines are not reordered by the Unicode bidirectional algorithm.
/// </remarks>
internal sealed class TextShaper(Func<Face, FontSource> faces, Func<FontSource> music, SystemFonts system)
{
    // A song repeats its fret numbers and chord names thousands of times; a desk that stays open must not keep every word ever typed.
    private const int MostRemembered = 16_384;

    private readonly ConcurrentDictionary<(string Text, Face Face), ShapedText> remembered = new();

    public ShapedText Shape(string text, Face face)
    {
        if (remembered.TryGetValue((text, face), out var known)) return known;
        if (remembered.Count >= MostRemembered) remembered.Clear();
        return remembered[(text, face)] = ShapeAnew(PlainLine.Of(text), face);
    }

    private ShapedText ShapeAnew(string line, Face face)
    {
        var missing = new List<Rune>();
        var stretches = Split(line, face, missing);
        if (stretches.Count > 1 && stretches.TrueForAll(stretch => RunShaper.RunsLeftwards(stretch.Text))) stretches.Reverse();
        var runs = new GlyphRun[stretches.Count];
        var x = 0.0;
        for (var i = 0; i < runs.Length; i++)
        {
            var (source, text) = stretches[i];
            runs[i] = source == MusicIfUsed(text) ? RunShaper.Accidentals(source, text, ref x) : RunShaper.Shape(source, text, ref x);
        }

        return new ShapedText(runs, x, [.. missing]);
    }

    private FontSource? MusicIfUsed(string text) => TextAccidentals.GlyphFor(Rune.GetRuneAt(text, 0).Value) is null ? null : music();

    private List<(FontSource Source, string Text)> Split(string line, Face face, List<Rune> missing)
    {
        var stretches = new List<(FontSource Source, string Text)>();
        FontSource? current = null;
        var start = 0;
        var at = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            var source = current is not null && Joins(rune, current) ? current : Choose(rune, face, missing);
            if (current is not null && source != current)
            {
                stretches.Add((current, line[start..at]));
                start = at;
            }

            current = source;
            at += rune.Utf16SequenceLength;
        }

        if (current is not null) stretches.Add((current, line[start..]));
        return stretches;
    }

    /// <summary>Marks and joiners stay with the letter before them when its font has them, so that accents land on it.</summary>
    private static bool Joins(Rune rune, FontSource current) =>
        Rune.GetUnicodeCategory(rune) switch
        {
            System.Globalization.UnicodeCategory.NonSpacingMark or System.Globalization.UnicodeCategory.EnclosingMark
                or System.Globalization.UnicodeCategory.SpacingCombiningMark => current.GlyphOf(rune.Value) != 0,
            System.Globalization.UnicodeCategory.Format => true,
            _ => false,
        };

    private FontSource Choose(Rune rune, Face face, List<Rune> missing)
    {
        var first = faces(face);
        if (first.GlyphOf(rune.Value) != 0) return first;
        if (TextAccidentals.GlyphFor(rune.Value) is not null) return music();
        var sans = faces(face is Face.SerifBold or Face.SansBold ? Face.SansBold : Face.Sans);
        if (sans.GlyphOf(rune.Value) != 0) return sans;
        if (system.For(rune, face) is { } other) return other;
        if (!missing.Contains(rune)) missing.Add(rune);
        return first;
    }
}
