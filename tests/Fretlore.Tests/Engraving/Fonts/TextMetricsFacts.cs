using CsCheck;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Tests.Engraving.Fonts;

public class TextMetricsFacts
{
    private static readonly FontLibrary Library = new();

    private static readonly ITextMetrics Texts = Library.Texts;

    [Fact]
    public void Kerning_DrawsAVAndToTogether()
    {
        var apart = Texts.WidthOf("A", Face.Serif, 1) + Texts.WidthOf("V", Face.Serif, 1);
        Assert.True(Texts.WidthOf("AV", Face.Serif, 1) < apart - 0.02);
    }

    [Fact]
    public void Ligatures_StayOff_SoThatEachLetterIsAGlyph()
    {
        var shaped = Library.Shaper.Shape("fifty-five officers", Face.SerifItalic);
        Assert.Equal("fifty-five officers".Length, shaped.Runs.Sum(run => run.Glyphs.Length));
    }

    [Theory]
    [InlineData(Face.Serif, 0.670)]
    [InlineData(Face.SerifBold, 0.670)]
    [InlineData(Face.Sans, 0.660)]
    [InlineData(Face.SansBold, 0.660)]
    public void CapHeight_IsWhatTheFontsOwnTableSays(Face face, double share)
    {
        // Source: sCapHeight in the OS/2 table of each font, over 1000 units per em.
        Assert.Equal(share * 3, Texts.CapHeight(face, 3), 0.003);
    }

    [Fact]
    public void Digits_AreAsHighAsCapitalsOrALittleLower()
    {
        foreach (var face in Enum.GetValues<Face>())
        {
            var digits = Texts.DigitHeight(face, 1);
            Assert.InRange(digits, Texts.CapHeight(face, 1) * 0.9, Texts.CapHeight(face, 1) * 1.05);
            Assert.True(Texts.Ascent(face, 1) > digits && Texts.Descent(face, 1) > 0.1);
        }
    }

    [Fact]
    public void Width_GrowsInProportionToSize() =>
        Gen.Select(Gen.String[Gen.Char['A', 'z'], 1, 20], Gen.Enum<Face>(), Gen.Double[0.1, 40])
            .Sample((text, face, size) => Assert.Equal(Texts.WidthOf(text, face, 1) * size, Texts.WidthOf(text, face, size), 1e-9 * (1 + size)));

    [Fact]
    public void AnyText_HasAWidth() =>
        Gen.Select(Gen.String, Gen.Enum<Face>()).Sample((text, face) => Assert.True(Texts.WidthOf(text, face, 1) >= 0));

    [Fact]
    public void FlatsAndSharps_ComeFromTheMusicFont_AndCountInTheWidth()
    {
        var shaped = Library.Shaper.Shape("B♭m7/E♯", Face.SerifBold);
        Assert.Empty(shaped.Missing);
        Assert.Equal(["B", "♭", "m7/E", "♯"], shaped.Runs.Select(run => run.Text));
        Assert.Same(Library.MusicSource, shaped.Runs[1].Source);
        Assert.True(Texts.WidthOf("B♭", Face.SerifBold, 1) > Texts.WidthOf("B", Face.SerifBold, 1) + 0.2);
    }

    [Fact]
    public void ManyThreads_MeasureTheSame()
    {
        var library = new FontLibrary();
        var words = Enumerable.Range(0, 400).Select(number => $"word {number}").ToArray();
        var expected = words.Select(word => Texts.WidthOf(word, Face.Serif, 1)).ToArray();
        var found = words.AsParallel().AsOrdered().Select(word => library.Texts.WidthOf(word, Face.Serif, 1)).ToArray();
        Assert.Equal(expected, found);
    }

    [Fact]
    public void CharacterOursLack_ComesFromTheFirstGivenFontThatHasIt()
    {
        // The music font stands in for a font of the system: its clef at U+E050 is in none of the text faces.
        Stream[] given = [new MemoryStream([1, 2, 3]), new MemoryStream(FontFiles.Read(FontFiles.Music))];
        var shaped = new FontLibrary(given).Shaper.Shape("x\ue050", Face.Serif);
        Assert.Empty(shaped.Missing);
        Assert.Equal("Bravura", shaped.Runs[1].Source.Family);
        Assert.Equal(0xe050, Assert.Single(Library.Shaper.Shape("x\ue050", Face.Serif).Missing).Value);
    }
}
