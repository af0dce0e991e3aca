using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Fonts.Subset;
using SkiaSharp;

namespace Fretlore.Tests.Engraving.Fonts;

public class FontSubsetFacts
{
    private static readonly FontLibrary Library = new();

    [Fact]
    public void CutMusicFont_DrawsEveryGlyphAsTheWholeOneDoes()
    {
        // The cut font has quadratic outlines in whole units where the whole one has cubics, so edges may differ by a unit: 1/250 of a staff space.
        var whole = Library.MusicSource;
        var glyphs = SmuflNames.CodePoints().Values.Select(whole.GlyphOf).Distinct().ToArray();
        var subset = FontSubsetter.Cut(whole, glyphs, new Dictionary<int, ushort>(), "FretloreMusic-Regular", shapedByReader: false)!;
        using var data = SKData.CreateCopy(subset.Bytes);
        using var typeface = SKTypeface.FromData(data);
        using var font = new SKFont(typeface, whole.UnitsPerEm) { Hinting = SKFontHinting.None };
        foreach (var glyph in glyphs)
        {
            using var expected = whole.OutlineOf(glyph);
            using var drawn = font.GetGlyphPath(subset.Glyphs[glyph]);
            var (a, b) = (expected.TightBounds, drawn.TightBounds);
            Assert.True(
                Math.Abs(a.Left - b.Left) <= 1.5 && Math.Abs(a.Top - b.Top) <= 1.5 && Math.Abs(a.Right - b.Right) <= 1.5 && Math.Abs(a.Bottom - b.Bottom) <= 1.5,
                $"Glyph {glyph}: {a} became {b}.");
            Assert.InRange(Differing(expected, drawn, a), 0, 0.02);
        }
    }

    [Fact]
    public void CutFont_FindsItsCharactersAndBearsOurNameAndTheLicence()
    {
        var whole = Library.SourceOf(Face.SerifBold);
        var characters = "Ember7é".ToDictionary(character => (int)character, character => whole.GlyphOf(character));
        var subset = FontSubsetter.Cut(whole, characters.Values, characters, "FretloreSerif-Bold", shapedByReader: true)!;
        var cut = new FontSource("Fretlore Serif", "Bold", subset.Bytes);
        foreach (var (character, glyph) in characters) Assert.Equal(subset.Glyphs[glyph], cut.GlyphOf(character));
        Assert.Equal(0, cut.GlyphOf('Z'));
        Assert.Equal("Fretlore Serif", cut.Typeface.FamilyName);
        Assert.InRange(subset.Bytes.Length, 500, 8000);
        var names = System.Text.Encoding.BigEndianUnicode.GetString(cut.Typeface.GetTableData(0x6E616D65)[(6 + 12 * 8)..]);
        Assert.Contains("SIL Open Font License", names, StringComparison.Ordinal);
        Assert.Contains("Adobe", names, StringComparison.Ordinal);
        Assert.DoesNotContain("Source", names, StringComparison.Ordinal);
    }

    [Fact]
    public void CutFontForAReaderThatShapes_KeepsItsKerning()
    {
        var whole = Library.SourceOf(Face.Serif);
        var characters = "AV".ToDictionary(character => (int)character, character => whole.GlyphOf(character));
        var subset = FontSubsetter.Cut(whole, characters.Values, characters, "FretloreSerif-Regular", shapedByReader: true)!;
        var cut = new FontSource("Fretlore Serif", "Regular", subset.Bytes);
        var x = 0.0;
        Fretlore.Engraving.Fonts.Shaping.RunShaper.Shape(cut, "AV", ref x);
        Assert.Equal(Library.Texts.WidthOf("AV", Face.Serif, 1), x, 1e-9);
    }

    /// <summary>The share of a glyph's box in which two outlines differ, at 1/50 of a staff space a pixel.</summary>
    private static double Differing(SKPath expected, SKPath drawn, SKRect box)
    {
        using var a = Filled(expected, box);
        using var b = Filled(drawn, box);
        ReadOnlySpan<byte> first = a.GetPixelSpan();
        ReadOnlySpan<byte> second = b.GetPixelSpan();
        var differing = 0;
        for (var i = 0; i < first.Length; i++)
            if (Math.Abs(first[i] - second[i]) > 128) differing++;
        return differing / (double)first.Length;
    }

    private static SKBitmap Filled(SKPath path, SKRect box)
    {
        const float scale = 0.2f;
        var bitmap = new SKBitmap(new SKImageInfo((int)(box.Width * scale) + 2, (int)(box.Height * scale) + 2, SKColorType.Alpha8));
        using var canvas = new SKCanvas(bitmap);
        using var ink = new SKPaint { IsAntialias = true };
        canvas.Scale(scale);
        canvas.Translate(-box.Left, -box.Top);
        canvas.DrawPath(path, ink);
        return bitmap;
    }
}
