using System.Text.Json;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Tests.Engraving.Fonts;

public class MusicFontFacts
{
    private static readonly FontLibrary Library = new();

    [Theory]
    [InlineData("staffLineThickness", 0.13)]
    [InlineData("stemThickness", 0.12)]
    [InlineData("beamThickness", 0.5)]
    [InlineData("legerLineExtension", 0.4)]
    [InlineData("thickBarlineThickness", 0.5)]
    public void Default_IsWhatBravuraPublishes(string name, double spaces)
    {
        // Source: engravingDefaults of Bravura 1.392, as its designers publish them in the font's metadata.
        Assert.Equal(spaces, Library.Music.Default(name));
    }

    [Fact]
    public void BlackNotehead_IsOneSpaceHighAndAbout118Wide()
    {
        // Source: SMuFL 1.4, "Glyph bounding box" example for Bravura: SW (0, -0.5), NE (1.18, 0.5).
        Assert.Equal(new Box(0, -0.5, 1.18, 0.5), Library.Music.InkOf(Smufl.NoteheadBlack));
        Assert.Equal(1.18, Library.Music.AdvanceOf(Smufl.NoteheadBlack));
    }

    [Fact]
    public void StemAnchor_StandsRightAndAboveTheMiddleOfTheHead_WithYDownwards()
    {
        // Source: SMuFL 1.4, example of glyphsWithAnchors for Bravura: stemUpSE (1.18, 0.168), stemDownNW (0, -0.168).
        Assert.Equal(new Point(1.18, -0.168), Library.Music.AnchorOf(Smufl.NoteheadBlack, "stemUpSE"));
        Assert.Equal(new Point(0, 0.168), Library.Music.AnchorOf(Smufl.NoteheadBlack, "stemDownNW"));
        Assert.Null(Library.Music.AnchorOf(Smufl.NoteheadBlack, "noSuchAnchor"));
    }

    [Fact]
    public void EveryGlyphOfTheTable_HasTheInkThatTheMetadataGivesItsName()
    {
        using var metadata = JsonDocument.Parse(FontFiles.Read(FontFiles.MusicMetadata));
        var boxes = metadata.RootElement.GetProperty("glyphBBoxes");
        var codePoints = SmuflNames.CodePoints();
        Assert.True(codePoints.Count > 290, $"Only {codePoints.Count} glyphs are in the table.");
        foreach (var (name, codePoint) in codePoints)
        {
            var source = Library.MusicSource;
            var glyph = source.GlyphOf(codePoint);
            Assert.True(glyph != 0, $"The font has no glyph {name} at U+{codePoint:X4}.");
            using var outline = source.OutlineOf(glyph);
            var drawn = outline.TightBounds;
            var (northEast, southWest) = (boxes.GetProperty(name).GetProperty("bBoxNE"), boxes.GetProperty(name).GetProperty("bBoxSW"));
            var space = source.UnitsPerEm / 4.0;
            Assert.Equal(southWest[0].GetDouble(), drawn.Left / space, 0.012);
            Assert.Equal(-northEast[1].GetDouble(), drawn.Top / space, 0.012);
            Assert.Equal(northEast[0].GetDouble(), drawn.Right / space, 0.012);
            Assert.Equal(-southWest[1].GetDouble(), drawn.Bottom / space, 0.012);
        }
    }

    [Fact]
    public void CodePoints_AreEachUsedOnce() =>
        Assert.Equal(SmuflNames.CodePoints().Count, SmuflNames.CodePoints().Values.Distinct().Count());

    [Fact]
    public void GlyphOutsideTheTable_IsABugAndSaysWhich()
    {
        var error = Assert.Throws<ArgumentException>(() => Library.Music.InkOf(0xF8FF));
        Assert.Contains("U+F8FF", error.Message, StringComparison.Ordinal);
    }
}
