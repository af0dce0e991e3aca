using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Binding;

public class FormFacts
{
    private const string TwoParts = """
        title  Two
        tempo  Q = 100
        tuning E2 A2 D3 G3 B3 E4
        part one
        part two

        riff furnace
          @6 Q 0 1 2 3 | 4 5 6 7 |

        riff tail
          @6 W 9 |


        """;

    private static Song Section(string one, string? two = null) =>
        Sheets.Song(TwoParts + $"section All\n  one {one}\n" + (two is null ? "" : $"  two {two}\n"));

    private static string Played(Song song, int part = 0) => string.Join(' ', PlayOrder.Of(song.Bars).Select(b => Frets(song.Parts[part].Bars[b.Bar])));

    private static string Frets(PartBar bar) => bar.IsRest ? bar.RoadMap ?? "rest" : string.Join(',', bar.Notes.Select(n => n.Fret.Number));

    private static string Written(Song song, int part = 0) => string.Join(' ', song.Parts[part].Bars.Select(Frets));

    [Fact]
    public void RiffPlayedThreeTimes_IsWrittenOnceAsARepeat()
    {
        var song = Section("furnace times 3");
        Assert.Equal("0,1,2,3 4,5,6,7", Written(song));
        Assert.Equal((true, 3), (song.Bars[0].StartsRepeat, song.Bars[1].RepeatCount));
        Assert.Equal([new RiffUse("furnace", 0, 0, 2)], song.RiffUses.Items);
        Assert.Equal("0,1,2,3 4,5,6,7 0,1,2,3 4,5,6,7 0,1,2,3 4,5,6,7", Played(song));
    }

    [Fact]
    public void RestsBesideARepeatedRiff_FoldWithIt() => Assert.Equal(2, Section("furnace times 4", "rest 8").Bars.Count);

    [Fact]
    public void SameMusicWrittenOut_FoldsWithTheOtherPartsRepeat() =>
        Assert.Single(Section("tail times 2", "@6 Q 1 2 3 4 | 1 2 3 4 |").Bars);

    [Fact]
    public void OtherMusicInAPass_KeepsTheRepeatWrittenOut()
    {
        var song = Section("tail times 3", "@6 Q 1 2 3 4 | 1 2 3 5 | 1 2 3 4 |");
        Assert.Equal("9 9 9", Written(song));
        Assert.All(song.Bars, b => Assert.Equal(0, b.RepeatCount));
    }

    [Fact]
    public void InnerRepeat_FoldsWhereTheOuterOneCanNot()
    {
        var song = Section("times 2{ tail times 2 }", "@6 Q 1 2 3 4 | 1 2 3 4 | 5 5 5 5 | 5 5 5 5 |");
        Assert.Equal("9 9", Written(song));
        Assert.Equal([2, 2], song.Bars.Select(b => b.RepeatCount));
    }

    [Fact]
    public void Endings_AreWrittenAndPlayedInTheirPasses()
    {
        var song = Section("times 3{ @6 W 0 | on 1-2{ 1 | } on 3{ 2 | 3 | } } tail");
        Assert.Equal("0 1 2 3 9", Written(song));
        Assert.Equal("0 1 0 1 0 2 3 9", Played(song));
        Assert.Equal([0, 3, 0, 0, 0], song.Bars.Select(b => b.RepeatCount));
        Assert.Equal(new ValueList<int>([1, 2]), song.Bars[1].EndingPasses);
        Assert.True(song.Bars[2].StartsEnding && song.Bars[3].EndsEnding);
    }

    [Fact]
    public void PassWithoutAnEndingBesideOthers_IsWrittenOut() =>
        Assert.Equal("0 0 1 9", Written(Section("times 2{ @6 W 0 | on 2{ 1 | } } tail")));

    [Fact]
    public void TieIntoARepeat_ThatTheSecondPassHasNot_IsWrittenOut()
    {
        var song = Section("@6 W 5 | times 2{ H = 7 | W 3 | }");
        Assert.Equal("5 5,7 3 3,7 3", Written(song));
    }

    [Fact]
    public void TieAroundARepeat_IsKept()
    {
        var song = Section("@6 W 5 | times 2{ H = 7 | H 3 5 | }");
        Assert.Equal("5 5,7 3,5 5,7 3,5", Played(song));
        var held = song.Parts[0].Bars[3].Notes.First();
        Assert.Equal((5, Attack.Held), (held.Fret.Number, held.Attack));
        Assert.True(song.Parts[0].Bars[2].Notes.Last().IsHeldOn);
        Assert.False(song.Parts[0].Bars[4].Notes.Last().IsHeldOn);
    }

    [Fact]
    public void TempoBeforeARepeat_DoesNotKeepItFromFolding()
    {
        var song = Section("tail (Q = 80) furnace times 2 (Q = 90) tail");
        Assert.Equal(4, song.Bars.Count);
        Assert.Equal([100m, 80m, 90m], song.Bars.SelectMany(b => b.Tempos).Select(t => t.Tempo.PerMinute));
    }

    [Theory]
    [InlineData("with bar 2: @6 W 8", "0,1,2,3 8")]
    [InlineData("with last bar: 8 8 8 8", "0,1,2,3 8,8,8,8")]
    [InlineData("with bars 1-2: W 8", "8")]
    [InlineData("without bar 1", "4,5,6,7")]
    [InlineData("with bar 1: @6 Q 8 8 8 8 | 9 9 9 9 without bar 2", "8,8,8,8 9,9,9,9")]
    public void Variation_ChangesItsBarsFromTheStateTheyBeganIn(string edits, string expected)
    {
        var text = TwoParts + $"riff turn = furnace {edits}\nsection All\n  one turn\n";
        if (edits.Contains("W 8") && !edits.Contains("@6")) text = text.Replace("W 8", "@6 W 8");
        var song = Sheets.Song(text);
        Assert.Equal(expected, Played(song));
        Assert.Equal("furnace", song.Riffs.Single(r => r.Name == "turn").VariationOf);
    }

    [Fact]
    public void VariationOfARepeat_IsMadeInEachPass()
    {
        var song = Sheets.Song(TwoParts + "riff loop\n  times 2{ @6 W 0 | 1 | } 2 |\nriff turn = loop with bar 2: 7 | 8\nsection All\n  one turn\n");
        Assert.Equal("0 7 8 0 7 8 2", Played(song));
        Assert.Equal("0 7 8 2", Written(song));
    }

    [Fact]
    public void Variation_OfAVariation_CountsItsBasesBars()
    {
        var song = Sheets.Song(TwoParts + "riff turn = furnace without bar 1\nriff turn-2 = turn with bar 1: 1 1 1 1\nsection All\n  one turn-2\n");
        Assert.Equal("1,1,1,1", Played(song));
    }

    [Fact]
    public void RiffOfRiffs_PlaysThemAndIsAUseOfEach()
    {
        var song = Sheets.Song(TwoParts + "riff both\n  furnace, tail\nsection All\n  one both\n");
        Assert.Equal([("furnace", 0, 2), ("tail", 2, 1), ("both", 0, 3)], song.RiffUses.Select(u => (u.Riff, u.FirstBar, u.BarCount)));
    }

    [Fact]
    public void Upbeat_IsAPickupForAll()
    {
        var song = Section("upbeat{ @6 E 1 2 } tail upbeat{ E 3 } tail", "tail times 2");
        Assert.Equal("1,2 9 3 9", Written(song));
        Assert.Equal("rest 9 rest 9", Written(song, 1));
        Assert.Equal([0, 1, 1, 2], song.Bars.Select(b => b.Number));
        Assert.Equal([Beats.Of(1), Beats.Of(4), Beats.Of(1, 2), Beats.Of(4)], song.Bars.Select(b => b.Length));
    }

    [Fact]
    public void MetreOfOnePart_HoldsForAllUntilTheNext()
    {
        var song = Sheets.Song(TwoParts + "section A\n  one @6 (meter 3/4) H. 0 | 1 |\n  two @6 Q 1 2 3 | 4 5 6 |\nsection B\n  one @6 H. 0 | (meter 4/4) W 1 |\n");
        Assert.Equal(["3/4", "3/4", "3/4", "4/4"], song.Bars.Select(b => b.Meter.ToString()));
    }

    [Fact]
    public void RiffsMetre_HoldsOnlyWhileItIsPlayed()
    {
        var song = Sheets.Song(TwoParts + "riff seven\n  meter 7/8 2+2+3\n  @6 Q 0 1 Q. 2 |\nsection A\n  one seven times 2, tail\n  two @6 Q 1 2 Q. 3 | Q 1 2 Q. 3 | rest\n");
        Assert.Equal(["7/8", "4/4"], song.Bars.Select(b => b.Meter.ToString()));
    }

    [Fact]
    public void KeyAndFeel_HoldUntilTheNextChange()
    {
        var song = Sheets.Song(TwoParts + "section A\n  key D dorian\n  feel swing\n  one tail\nsection B\n  one tail (key E minor) (straight) tail\n");
        Assert.Equal(["D dorian", "D dorian", "E minor"], song.Bars.Select(b => b.Key.ToString()));
        Assert.Equal([new Feel(ValueBase.Eighth), null, Feel.Straight], song.Bars.Select(b => b.FeelChange));
    }

    [Fact]
    public void TempoWithinABar_StandsWhereItIsWritten()
    {
        var song = Section("@6 H 0 (Q = 60) 1 |");
        Assert.Equal([Beats.Zero, Beats.Of(2)], song.Bars[0].Tempos.Select(t => t.At));
    }

    [Fact]
    public void CapoThatMoves_RaisesWhatIsPlayedFromThere()
    {
        var song = Section("tail (capo 3) tail @6 W 9 |");
        Assert.Equal([49, 52, 52], song.Parts[0].Bars.SelectMany(b => b.Notes).Select(n => n.Sounding.Midi));
    }

    [Fact]
    public void Again_CopiesTheLastBars_AndSaysSo()
    {
        var song = Section("@6 W 0 | again | Q 1 2 3 4 | again 2 |");
        Assert.Equal("0 0 1,2,3,4 0 1,2,3,4", Written(song));
        Assert.Equal([0, 1, 0, 2, 2], song.Parts[0].Bars.Select(b => b.Repeats));
    }

    [Fact]
    public void AgainAtTheStartOfARepeat_IsWrittenOut()
    {
        var song = Section("@6 W 0 | times 2{ again @6 W 1 | }");
        Assert.Equal("0 0 1", Written(song));
        Assert.Equal([0, 0, 0], song.Parts[0].Bars.Select(b => b.Repeats));
    }

    [Fact]
    public void SectionLikeAnother_TakesTheLinesItHasNotItself()
    {
        var song = Sheets.Song(TwoParts + "section A\n  one tail\n  two furnace times 2\nsection B like A\n  one furnace\n");
        Assert.Equal("9 rest rest rest 0,1,2,3 4,5,6,7 rest rest", Written(song));
        Assert.Equal("0,1,2,3 4,5,6,7 0,1,2,3 4,5,6,7 0,1,2,3 4,5,6,7 0,1,2,3 4,5,6,7", Played(song, 1));
        Assert.Equal([("A", 0, 4), ("B", 4, 4)], song.Sections.Select(s => (s.Name, s.FirstBar, s.BarCount)));
    }

    [Fact]
    public void RoadMap_TakesItsBars()
    {
        var song = Sheets.Song(TwoParts + "roadmap free\n  scale A minor pentatonic\nsection A\n  one roadmap free 4 bars | tail\n  two furnace times 2, tail\n");
        Assert.Equal("free free free free 9", Written(song));
        Assert.Equal([new RoadMapUse("free", 0, 0, 4)], song.RoadMapUses.Items);
    }

    [Fact]
    public void RiffWithoutATuning_IsWrittenForTheFirstPartThatPlaysIt()
    {
        var text = "title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\npart guitar\npart bass\n  tuning E1 A1 D2 G2\n"
            + "riff low\n  @4 W 0 |\nsection A\n  bass low\n  guitar low as sounded\n";
        var bound = Sheets.Read(text);
        Assert.Equal(4, bound.Song!.Riffs[0].Neck.StringCount);
        Assert.Contains(bound.Diagnostics, d => d.Code == "FL2162");
    }

    [Theory]
    [InlineData("as fretted", 6, 3, 41)]
    [InlineData("as sounded", 6, 5, 43)]
    public void RiffOnAnotherTuning_KeepsItsFretsOrItsPitches(string how, int number, int fret, int midi)
    {
        var song = Sheets.Song(TwoParts.Replace("part two", "part two\n  tuning D2 A2 D3 G3 B3 E4") + $"riff low\n  @6 W 3 |\nsection A\n  one low\n  two low {how}\n");
        var note = song.Parts[1].Bars[0].Notes.Single();
        Assert.Equal((number, fret, midi), (note.String.Value, note.Fret.Number, note.Sounding.Midi));
    }

    [Fact]
    public void LegatoAsSounded_MovesToOneStringTogether()
    {
        var song = Sheets.Song(TwoParts.Replace("part two", "part two\n  tuning E2 A2 D3 G3 C4 F4") + "riff run\n  @2 Q 0,3,0 5 |\nsection A\n  one run\n  two run as sounded\n");
        Assert.Equal([(3, 4), (3, 7), (3, 4), (2, 4)], song.Parts[1].Bars[0].Notes.Select(n => (n.String.Value, n.Fret.Number)));
    }

    [Fact]
    public void LineOfOnlyPart_NeedsNoName() =>
        Assert.Equal("guitar", Sheets.Song("title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\nsection All\n  @6 W 0 |").Parts.Single().Name);

    [Fact]
    public void Notes_AreNumberedThroughout_AndPointIntoTheText()
    {
        const string Text = TwoParts + "section A\n  one furnace, @6 W g5,7 |\n  two furnace, tail\n";
        var bound = Sheets.Bind(Text);
        var song = bound.Song!;
        var all = song.Parts.SelectMany(p => p.Bars).Concat(song.Riffs.SelectMany(r => r.Content)).SelectMany(b => b.Notes).ToList();
        Assert.Equal(Enumerable.Range(0, song.NoteCount), all.Select(n => n.Id.Index));
        Assert.Equal(song.NoteCount, bound.Spans.Length);
        Assert.Equal(all.Select(n => n.Fret.ToString()), all.Select(n => Text.Substring(bound.SpanOf(n.Id).Start, bound.SpanOf(n.Id).Length)));
    }

    [Fact]
    public void ShortPart_RestsToTheEnd_WithAWarning()
    {
        var bound = Sheets.Bind(TwoParts + "section A\n  one furnace times 2\n  two tail\n");
        Assert.Equal(Severity.Warning, bound.Diagnostics.Single(d => d.Code == "FL2274").Severity);
        Assert.Contains("3 bars", bound.Diagnostics.Single(d => d.Code == "FL2274").Message);
        Assert.Equal("9 rest rest rest", Written(bound.Song!, 1));
    }

    [Fact]
    public void RiffsThatDouble_AreRefusedBeforeTheyAreSpreadOut()
    {
        var riffs = Enumerable.Range(1, 30).Select(i => $"riff level-{i}\n  level-{i - 1} times 9\n");
        var bound = Sheets.Read(TwoParts + "riff level-0\n  @6 W 0 |\n" + string.Concat(riffs) + "section A\n  one level-30\n");
        Assert.Null(bound.Song);
        Assert.Single(bound.Diagnostics, d => d.Code == "FL2278");
    }

    [Fact]
    public void RiffsOwnTempoAndKey_AreForTheRiffAlone()
    {
        var song = Sheets.Song(TwoParts + "riff slow\n  tempo Q = 60\n  key E minor\n  @6 W 0 |\nsection A\n  one slow\n");
        Assert.Equal((100m, 60m), (song.Bars[0].Tempos[0].Tempo.PerMinute, song.Riffs.Single(r => r.Name == "slow").Bars[0].Tempos[0].Tempo.PerMinute));
        Assert.Equal((null, "E minor"), (song.Bars[0].Key?.ToString(), song.Riffs.Single(r => r.Name == "slow").Bars[0].Key?.ToString()));
    }

    [Fact]
    public void Lesson_IsBoundWithItsSteps()
    {
        var song = Sheets.Song(TwoParts + "section Verse 1\n  one furnace\nlesson\n  budget 6:30\n  step \"Main\" teach furnace, tail, Verse 1 at 60% 100% say \"Slowly.\"\n");
        Assert.Equal(new TimeSpan(0, 6, 30), song.Lesson!.Budget);
        var step = Assert.Single(song.Lesson.Steps);
        Assert.Equal([new Taught("furnace"), new Taught("tail"), new Taught("Verse 1")], step.Teaches.Items);
        Assert.Equal([60, 100], step.SpeedPercents.Items);
        Assert.Equal(("Main", "Slowly."), (step.Title, step.Say));
    }

    [Fact]
    public void LessonPointsAtBarsAndParts_AndSaysHowItMayBeTold()
    {
        var song = Sheets.Song(TwoParts + "section Verse 1\n  one furnace\nlesson\n  speaking-rate 145\n  excerpt Verse 1 bar 1\n"
            + "  step \"Main\" keep as walk-through teach furnace bar 1, Verse 1 bars 1-1 of one\n");
        Assert.Equal((145, new Taught("Verse 1", new BarRange(1, 1))), (song.Lesson!.SpeakingRate, song.Lesson.Excerpt));
        var step = Assert.Single(song.Lesson.Steps);
        Assert.Equal([new Taught("furnace", new BarRange(1, 1)), new Taught("Verse 1", new BarRange(1, 1), "one")], step.Teaches.Items);
        Assert.Equal((true, StepLength.WalkThrough), (step.IsKept, step.Length));
    }

    [Theory]
    [InlineData("@1 W 0 | 1 | (D.C.) 2 |", "0 1 0 1 2")]
    [InlineData("@1 W 0 | (segno) 1 | 2 | (D.S.) 3 |", "0 1 2 1 2 3")]
    [InlineData("@1 W 0 | 1 (fine) | 2 (D.C. al fine) |", "0 1 2 0 1")]
    [InlineData("@1 W 0 | (segno) 1 (to coda) | 2 (D.S. al coda) | (coda) 3 | 4 |", "0 1 2 1 3 4")]
    [InlineData("times 2{ @1 W 0 on 1{ 1 } on 2{ 2 } } 3 (to coda) | 4 (D.C. al coda) | (coda) 5 |", "0 1 0 2 3 4 0 2 3 5")]
    public void Jump_IsMadeOnce_AndRepeatsAfterItArePlayedOnce(string music, string played) => Assert.Equal(played, Played(Section(music)));

    [Fact]
    public void Jump_OfOnePart_IsOneForAll()
    {
        var song = Section("@1 W 0 | (segno) 1 | 2 (D.S.) |", "@6 W 5 | 6 | 7 (D.S.) |");
        Assert.Equal("0 1 2 1 2", Played(song));
        Assert.Equal("5 6 7 6 7", Played(song, 1));
        Assert.Equal([false, true, false], song.Bars.Select(b => b.IsSegno));
        Assert.Equal(Jump.DalSegno, song.Bars[2].Jump);
    }
}
