using System.Collections.Concurrent;
using SkiaSharp;

namespace Fretlore.Engraving.Fonts;

/// <summary>Outlines of the music glyphs around their origins in staff spaces, y downwards; each is made once and must not be changed.</summary>
internal sealed class GlyphOutlines(Func<FontSource> music)
{
    private const float SpacesPerEm = 4;

    private readonly ConcurrentDictionary<int, SKPath> outlines = new();

    /// <summary>The outline of a glyph; a box when the font has none.</summary>
    public SKPath Of(int codePoint) => outlines.GetOrAdd(codePoint, code =>
    {
        var source = music();
        var scale = SpacesPerEm / source.UnitsPerEm;
        using var units = source.OutlineOf(source.GlyphOf(code));
        var spaces = new SKPath();
        units.Transform(SKMatrix.CreateScale(scale, scale), spaces);
        return spaces;
    });
}
