using System.Collections.Concurrent;
using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using SkiaSharp;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>The ink of glyphs and texts as thin slices of their outlines: a flat has none at its upper right, a slash none at two corners.</summary>
internal sealed class OutlineSlices(FontLibrary fonts)
{
    private const double Thickness = 0.25;

    private readonly ConcurrentDictionary<int, ImmutableArray<Box>> glyphs = new();
    private readonly ConcurrentDictionary<(string, Face, double), ImmutableArray<Box>> texts = new();

    /// <summary>Slices of a music glyph around its origin, in staff spaces at scale 1.</summary>
    public ImmutableArray<Box> Of(int codePoint) => glyphs.GetOrAdd(codePoint, code => Slices(fonts.Outlines.Of(code), horizontal: true));

    /// <summary>Slices of a text that starts at the origin.</summary>
    public ImmutableArray<Box> Of(string value, Face face, double size) => texts.GetOrAdd((value, face, size), text =>
    {
        using var drawn = new SKPathBuilder();
        foreach (var run in fonts.Shaper.Shape(text.Item1, text.Item2).Runs)
        {
            for (var i = 0; i < run.Glyphs.Length; i++)
            {
                var scale = (float)(text.Item3 / run.Source.UnitsPerEm);
                using var outline = run.Source.OutlineOf(run.Glyphs[i]);
                var at = run.Places[i];
                drawn.AddPath(outline, SKMatrix.CreateScaleTranslation(scale, scale, (float)(at.X * text.Item3), (float)(at.Y * text.Item3)));
            }
        }
        using var path = drawn.Detach();
        return Slices(path, horizontal: false);
    });

    private static ImmutableArray<Box> Slices(SKPath path, bool horizontal)
    {
        var all = path.TightBounds;
        var (from, to) = horizontal ? (all.Top, all.Bottom) : (all.Left, all.Right);
        var count = Math.Max(1, (int)Math.Ceiling((to - from) / Thickness));
        var slices = ImmutableArray.CreateBuilder<Box>(count);
        for (var i = 0; i < count; i++)
        {
            double a = from + (to - from) * i / count, b = from + (to - from) * (i + 1) / count;
            using var band = new SKPathBuilder();
            band.AddRect(horizontal ? new SKRect(all.Left, (float)a, all.Right, (float)b) : new SKRect((float)a, all.Top, (float)b, all.Bottom));
            using var window = band.Detach();
            using var piece = path.Op(window, SKPathOp.Intersect);
            if (piece is null || piece.IsEmpty) continue;
            var ink = piece.TightBounds;
            slices.Add(new Box(ink.Left, ink.Top, ink.Right, ink.Bottom));
        }
        return slices.ToImmutable();
    }
}
