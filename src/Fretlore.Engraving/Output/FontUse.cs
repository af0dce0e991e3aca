using System.Text;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Fonts.Shaping;

namespace Fretlore.Engraving.Output;

/// <summary>Which glyphs of which fonts a document draws.</summary>
internal sealed class FontUse
{
    private readonly FontLibrary fonts;
    private readonly Dictionary<FontSource, GlyphUse> bySource = [];
    private readonly HashSet<(string Text, Face Face)> seen = [];
    private readonly HashSet<Rune> missing = [];

    private FontUse(FontLibrary fonts) => this.fonts = fonts;

    /// <summary>In a fixed order, so that the same document gives the same bytes.</summary>
    public IEnumerable<GlyphUse> Fonts =>
        bySource.Values.OrderBy(use => use.Source.Family, StringComparer.Ordinal).ThenBy(use => use.Source.Style, StringComparer.Ordinal);

    /// <summary>Code points of the music glyphs drawn as such.</summary>
    public SortedSet<int> Music { get; } = [];

    /// <summary>Characters that no font at hand has, in order.</summary>
    public IEnumerable<Rune> Missing => missing.Order();

    public static FontUse Of(Document document, FontLibrary fonts)
    {
        var use = new FontUse(fonts);
        foreach (var page in document.Pages) use.Add(page.Marks.AsSpan());
        return use;
    }

    /// <summary>Counts the music glyphs among those of the music font, for an output that sets them as type.</summary>
    /// <remarks>They get no characters: nobody searches for them, and private ones would stand between the words of the text.</remarks>
    public void AddMusicTo(FontSource music)
    {
        if (Music.Count == 0) return;
        if (!bySource.TryGetValue(music, out var use)) bySource[music] = use = new GlyphUse(music);
        foreach (var codePoint in Music) use.Glyphs.Add(music.GlyphOf(codePoint));
    }

    private void Add(ReadOnlySpan<Mark> marks)
    {
        foreach (var mark in marks)
        {
            if (mark is Group group) Add(group.Marks.AsSpan());
            else if (mark is Glyph glyph) Music.Add(glyph.CodePoint);
            else if (mark is Text text && seen.Add((text.Value, text.Face))) Add(fonts.Shaper.Shape(text.Value, text.Face));
        }
    }

    private void Add(ShapedText shaped)
    {
        missing.UnionWith(shaped.Missing);
        foreach (var run in shaped.Runs)
        {
            if (!bySource.TryGetValue(run.Source, out var use)) bySource[run.Source] = use = new GlyphUse(run.Source);
            use.Add(run);
        }
    }
}

/// <summary>The glyphs used of one font, and the characters that stand for them.</summary>
internal sealed class GlyphUse(FontSource source)
{
    public FontSource Source => source;

    public SortedSet<ushort> Glyphs { get; } = [];

    public SortedDictionary<int, ushort> Characters { get; } = [];

    public void Add(GlyphRun run)
    {
        Glyphs.UnionWith(run.Glyphs);
        foreach (var rune in run.Text.EnumerateRunes())
        {
            if (Characters.ContainsKey(rune.Value)) continue;
            var glyph = source.GlyphOf(run.IsAccidentals ? TextAccidentals.GlyphFor(rune.Value) ?? rune.Value : rune.Value);
            if (glyph == 0) continue;
            Characters[rune.Value] = glyph;
            Glyphs.Add(glyph);
        }
    }
}
