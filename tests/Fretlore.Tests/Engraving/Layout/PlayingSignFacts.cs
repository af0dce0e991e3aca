using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>What the hands do, as pages show it.</summary>
public class PlayingSignFacts
{
    private static readonly FontLibrary Fonts = new();

    [Fact]
    public void PreBendOnALowString_GoesUpBesideTheNumbersOverIt()
    {
        var b = new SongBuilder().Part("Guitar");
        b.Bar(neck => new Event
        {
            Start = default,
            Value = new(Fretlore.Music.ValueBase.Whole),
            Notes = [PlacedOn(neck, 3, 14) with { Bend = new Bend(200, []) }, PlacedOn(neck, 2, 15), PlacedOn(neck, 1, 15)],
        });
        var song = b.Build();
        Assert.Empty(CollisionFacts.Collisions(song, Studies.SpelledByKey(song)));
        var page = PageFacts.Engrave(song).Pages[0];
        var numbers = InkBoxes.Of(page, Fonts).Where(p => p.Path.EndsWith("text 15", StringComparison.Ordinal)).Select(p => p.Ink).ToArray();
        var arrow = PageFacts.Flat(page).OfType<Polygon>().Single(p => p.Points.Count == 3);
        Assert.Equal(2, numbers.Length);
        Assert.All(numbers, number => Assert.True(arrow.Points.Min(p => p.X) > number.Right));
    }

    [Fact]
    public void NotesBentTogetherByDifferentAmounts_HaveAnAmountEach_AndByTheSameOne()
    {
        Assert.Equal(["full", "\u00BD"], AmountsOf(200, 100));
        Assert.Equal(["full"], AmountsOf(200, 200));

        static IEnumerable<string> AmountsOf(int lower, int upper)
        {
            var b = new SongBuilder().Part("Guitar");
            b.Bar(neck => new Event
            {
                Start = default,
                Value = new(Fretlore.Music.ValueBase.Whole),
                Notes = [PlacedOn(neck, 4, 7) with { Bend = new Bend(0, [lower]) }, PlacedOn(neck, 3, 7) with { Bend = new Bend(0, [upper]) }],
            });
            var song = b.Build();
            Assert.Empty(CollisionFacts.Collisions(song, Studies.SpelledByKey(song)));
            return PageFacts.Flat(PageFacts.Engrave(song).Pages[0]).OfType<Text>().Select(t => t.Value).Where(t => t is "full" or "\u00BD").Order(StringComparer.Ordinal);
        }
    }

    [Theory]
    [InlineData("H [. . . . 5 0] =", 2)]
    [InlineData("H [. . . 9 5 0] =", 3)]
    [InlineData("bass{ @5 H 12 = } @4 H 7 =", 2)]
    [InlineData("bass{ @2 H 5 = } top{ @3 H 9 = } @1 H 0 =", 3)]
    public void UnisonOnSeveralStrings_HasATieForEach_AndNoneOnAnother(string bar, int ties)
    {
        var song = Sheets.Song($"title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\nsection All\n  @1 {bar} |");
        Assert.Empty(CollisionFacts.Collisions(song, Studies.SpelledByKey(song)));
        foreach (var show in (Notation[])[Notation.Staff, Notation.Tab])
        {
            var drawn = PageFacts.Flat(PageFacts.Engrave(song, new PageOptions { Show = show }).Pages[0]).OfType<Slur>().ToArray();
            Assert.Equal(ties, drawn.Length);
            Assert.Equal(ties, drawn.Distinct().Count());
        }
    }

    [Fact]
    public void StaffAlone_SaysHowNotesAreMade()
    {
        var shown = PageFacts.Flat(PageFacts.Engrave(StudySongs.EverySign(), new PageOptions { Show = Notation.Staff }).Pages[0]).ToArray();
        var letters = shown.OfType<Text>().Select(t => t.Value).ToArray();
        foreach (var letter in (string[])["H", "P", "T"]) Assert.Contains(letter, letters);
        Assert.Contains(shown.OfType<Glyph>(), g => g.CodePoint == Smufl.GuitarVibratoStroke);
        Assert.Contains(shown.OfType<Glyph>(), g => g.CodePoint == Smufl.StringsDownBow);
    }

    [Theory]
    [InlineData(Notation.StaffAndTab)]
    [InlineData(Notation.Staff)]
    [InlineData(Notation.Tab)]
    public void OrnamentsJumpsAndTheArm_AreDrawnInEachNotation(Notation show)
    {
        var shown = PageFacts.Flat(PageFacts.Engrave(StudySongs.JumpsAndOrnaments(), new PageOptions { Show = show }).Pages[0]).ToArray();
        var glyphs = shown.OfType<Glyph>().Select(g => g.CodePoint).ToHashSet();
        foreach (var glyph in (int[])[Smufl.Segno, Smufl.Coda, Smufl.FermataAbove, Smufl.OrnamentTrill, Smufl.WiggleTrill]) Assert.Contains(glyph, glyphs);
        var words = shown.OfType<Text>().Select(t => t.Value).ToHashSet();
        foreach (var word in (string[])["To Coda", "D.S. al Coda", "rake", "\u2212\u00BD", "3"]) Assert.Contains(word, words);
        Assert.Equal(show != Notation.Staff, words.Contains("("));
        Assert.Equal(show == Notation.Staff, glyphs.Contains(Smufl.GuitarString2));
    }

    [Fact]
    public void SlideOfOnePart_HoldsTwoSystems_InTheMiddleOfTheFrame()
    {
        var slide = PaperPreset.Find("slide")!;
        var song = StudySongs.TwoVoices();
        var pages = PageFacts.Engrave(song, PageOptions.On(slide, song, Notation.StaffAndTab, []) with { Legend = false }).Pages;
        foreach (var page in pages)
        {
            var ink = InkBoxes.Of(page, Fonts).Where(p => p.Path.Contains("system-", StringComparison.Ordinal)).Select(p => p.Ink).ToArray();
            if (ink.Length == 0) continue;
            var above = ink.Min(i => i.Top);
            var below = page.Height - ink.Max(i => i.Bottom);
            if (page != pages[0]) Assert.InRange(above / below, 0.4, 1.2);
        }
        Assert.Contains(pages, p => p.Marks.OfType<Group>().Count(g => g.Id?.StartsWith("system-", StringComparison.Ordinal) == true) == 2);
    }

    private static Note PlacedOn(Fretlore.Guitar.Neck neck, int number, int fret) =>
        new() { String = new(number), Fret = new(fret), Sounding = neck.Sounding(new(number), new(fret)) };
}
