using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Fonts.Subset;
using SkiaSharp;

namespace Fretlore.Engraving.Output;

/// <summary>The fonts a canvas draws text with: whole ones for a bitmap, cut ones where the file carries them.</summary>
internal sealed class CanvasFonts : IDisposable
{
    private readonly Dictionary<FontSource, CanvasFont> bySource = [];

    /// <summary>The font that music glyphs are set with; null where they are drawn as outlines.</summary>
    public CanvasFont? Music { get; private set; }

    /// <summary>Whole fonts, as they are, and outlines for music.</summary>
    public static CanvasFonts Whole() => new();

    /// <summary>Fonts cut to what a document uses of them, the music font among them.</summary>
    public static CanvasFonts Cut(FontUse use, FontSource music)
    {
        var fonts = new CanvasFonts();
        use.AddMusicTo(music);
        foreach (var font in use.Fonts) fonts.bySource[font.Source] = CanvasFont.Cut(font);
        fonts.Music = fonts.bySource.GetValueOrDefault(music);
        return fonts;
    }

    public CanvasFont Of(FontSource source)
    {
        if (!bySource.TryGetValue(source, out var font)) bySource[source] = font = CanvasFont.Whole(source);
        return font;
    }

    public void Dispose()
    {
        foreach (var font in bySource.Values) font.Dispose();
    }
}

/// <summary>One font of a canvas.</summary>
internal sealed class CanvasFont : IDisposable
{
    private readonly SKTypeface? cut;
    private readonly FontSource source;
    private readonly IReadOnlyDictionary<ushort, ushort>? numbers;

    private CanvasFont(FontSource source, SKTypeface? cut, IReadOnlyDictionary<ushort, ushort>? numbers)
    {
        this.source = source;
        this.cut = cut;
        this.numbers = numbers;
    }

    public static CanvasFont Whole(FontSource source) => new(source, null, null);

    public static CanvasFont Cut(GlyphUse use)
    {
        var name = $"{use.Source.Family}-{use.Source.Style}".Replace(" ", "", StringComparison.Ordinal);
        if (FontSubsetter.Cut(use.Source, use.Glyphs, use.Characters, name, shapedByReader: false) is not { } subset) return Whole(use.Source);
        using var data = SKData.CreateCopy(subset.Bytes);
        return SKTypeface.FromData(data) is { } typeface ? new CanvasFont(use.Source, typeface, subset.Glyphs) : Whole(use.Source);
    }

    public ushort GlyphOf(ushort glyph) => numbers is null ? glyph : numbers.GetValueOrDefault(glyph);

    public SKFont AtSize(float size)
    {
        var font = source.AtSize(size);
        if (cut is not null) font.Typeface = cut;
        return font;
    }

    public void Dispose() => cut?.Dispose();
}
