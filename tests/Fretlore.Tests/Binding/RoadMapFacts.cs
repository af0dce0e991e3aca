using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Binding;

/// <summary>Road maps in a sheet: every rule is read as it is written, and fixed phrases stand in their bars.</summary>
public class RoadMapFacts
{
    private const string Riffs = """
        riff dive
          @2 W 5 |

        riff climb
          @2 H 5 7 | H 8 10 |


        """;

    private static readonly NoteName A = new(Step.A), D = new(Step.D), GSharp = new(Step.G, 1);

    public static TheoryData<string, RoadMapRule> Rules => new()
    {
        { "fixed dive in bar 1", new FixedRule("dive", StretchBars.Of(1, 1)) },
        { "fixed climb in bars 1-2, 5-6", new FixedRule("climb", new StretchBars([new(1, 2), new(5, 6)])) },
        { "fixed dive in last bar", new FixedRule("dive", StretchBars.Final(1)) },
        { "scale D minor pentatonic", new ScaleRule(D, "minor pentatonic") },
        { "scale A dorian in bars 5-8", new ScaleRule(A, "dorian", StretchBars.Of(5, 8)) },
        { "roles root, third, seventh in last 2 bars", new RolesRule([ToneRole.Root, ToneRole.Third, ToneRole.Seventh], StretchBars.Final(2)) },
        { "strings 1-4", new StringsRule(new StringNumber(1), new StringNumber(4)) },
        { "strings 3 in bar 2", new StringsRule(new StringNumber(3), new StringNumber(3), StretchBars.Of(2, 2)) },
        { "from fret 15 to fret 5", new FretsRule(new Fret(15), new Fret(5), true) },
        { "frets 10-14 in bars 1-4", new FretsRule(new Fret(10), new Fret(14), false, StretchBars.Of(1, 4)) },
        { "contour falling", new ContourRule(Contour.Falling) },
        { "density E to S", new DensityRule(ValueBase.Eighth, ValueBase.Sixteenth) },
        { "density Q in bar 8", new DensityRule(ValueBase.Quarter, ValueBase.Quarter, StretchBars.Of(8, 8)) },
        { "rhythm ESS, Q.E", new RhythmRule([Cell(Eighth, Sixteenth, Sixteenth), Cell(new NoteValue(ValueBase.Quarter, 1), Eighth)]) },
        { "rhythm E:3, S:5/3", new RhythmRule([
            new RhythmCell([Eighth, Eighth, Eighth], new Tuplet(3, 2, ValueBase.Eighth)),
            new RhythmCell([Sixteenth, Sixteenth, Sixteenth, Sixteenth, Sixteenth], new Tuplet(5, 3, ValueBase.Sixteenth))]) },
        { "may use dive, climb in bars 2-4", new LickRule(["dive", "climb"], StretchBars.Of(2, 4)) },
        { "aim A", new AimRule(A) },
        { "aim A by a half-step bend of G# on beat 3 in bar 4", new AimRule(A, new Approach(ApproachKind.Bend, 1, GSharp), 3, null, StretchBars.Of(4, 4)) },
        { "aim A on string 2 by a slide from below", new AimRule(A, new Approach(ApproachKind.Slide, Side: Side.Below), null, new StringNumber(2)) },
        { "aim A from a half step below", new AimRule(A, new Approach(ApproachKind.Step, 1, Side: Side.Below)) },
        { "aim A by a whole-step bend", new AimRule(A, new Approach(ApproachKind.Bend, 2)) },
        { "aim A by a pull-off", new AimRule(A, new Approach(ApproachKind.PullOff)) },
        { "aim A from D", new AimRule(A, new Approach(ApproachKind.Step, From: D)) },
        { "avoid Bb, open strings, bends, slides, repeats, leaps over a fifth", new AvoidRule([
            new Avoided.Note(new NoteName(Step.B, -1)), new Avoided.OpenStrings(), new Avoided.Bends(), new Avoided.Slides(), new Avoided.Repeats(), new Avoided.Leaps(4)]) },
        { "end D", new EndRule(D) },
        { "end D on string 3 by a hammer-on from A, held", new EndRule(D, new Approach(ApproachKind.HammerOn, From: A), new StringNumber(3), true) },
    };

    private static NoteValue Eighth => new(ValueBase.Eighth);

    private static NoteValue Sixteenth => new(ValueBase.Sixteenth);

    private static RhythmCell Cell(params NoteValue[] values) => new(values.ToValueList());

    [Theory]
    [MemberData(nameof(Rules))]
    public void Rule_IsReadAsWritten_AndWritesItselfTheSame(string text, RoadMapRule expected)
    {
        Assert.Equal(expected, Assert.Single(MapOf(text).Rules));
        Assert.Equal(text, expected.ToString());
    }

    [Fact]
    public void StringsAfterAScale_AreARuleOfTheirOwn() =>
        Assert.Equal([new ScaleRule(A, "dorian", StretchBars.Of(1, 2)), new StringsRule(new(1), new(4), StretchBars.Of(1, 2))], MapOf("scale A dorian on strings 1-4 in bars 1-2").Rules.Items);

    [Theory]
    [InlineData("aim A by half-step bend of G#", "by a half-step bend of G#")]
    [InlineData("aim A from half-step below", "from a half step below")]
    [InlineData("end on A held", null)]
    public void LooserWording_IsUnderstood(string text, string? way)
    {
        var rule = Assert.Single(MapOf(text).Rules);
        Assert.Equal(way, (rule as AimRule)?.How?.ToString());
    }

    [Fact]
    public void ARuleForABar_TakesThePlaceOfTheOneForAll()
    {
        var map = MapOf("scale A dorian\n  scale D minor in last bar\n  scale A blues in bars 2-3");
        Assert.Equal(["dorian", "blues", "blues", "minor"], Enumerable.Range(1, 4).Select(bar => map.RuleIn<ScaleRule>(bar, 4)!.Name));
    }

    // Four fingers and a fret of reach, going by equal ways from bar to bar.
    [Fact]
    public void AWayAlongTheNeck_IsAHandThatMoves()
    {
        var rule = new FretsRule(new Fret(15), new Fret(5), true);
        Assert.Equal([(11, 15), (9, 13), (7, 11), (5, 9)], Enumerable.Range(1, 4).Select(bar => FretWindow.Of(rule, bar, 4)).Select(w => (w.Low, w.High)));
        var up = new FretsRule(new Fret(2), new Fret(12), true);
        Assert.Equal([(2, 6), (4, 8), (6, 10), (8, 12)], Enumerable.Range(1, 4).Select(bar => FretWindow.Of(up, bar, 4)).Select(w => (w.Low, w.High)));
        Assert.Equal(new FretWindow(5, 8), FretWindow.Of(new FretsRule(new Fret(8), new Fret(5), true), 1, 4));
    }

    [Fact]
    public void FixedPhrases_StandInTheirBars_AndTheRestIsFree()
    {
        var song = SongOf("fixed climb in bars 2-3\n  fixed dive in last 2 bars", 6);
        Assert.Equal(["free", "5,7", "8,10", "free", "5", "5"], song.Parts[0].Bars.Select(b => b.IsRest ? "free" : string.Join(',', b.Notes.Select(n => n.Fret.Number))));
        Assert.All(song.Parts[0].Bars, bar => Assert.Equal("map", bar.RoadMap));
        Assert.Equal(new RoadMapUse("map", 0, 0, 6), Assert.Single(song.RoadMapUses));
        Assert.Equal([("climb", 1, 2), ("dive", 4, 1), ("dive", 5, 1)], song.RiffUses.Select(u => (u.Riff, u.FirstBar, u.BarCount)));
    }

    [Fact]
    public void OneBar_IsWhereALongerPhraseBegins() => Assert.Equal([true, false, false, true], SongOf("fixed climb in bar 2", 4).Parts[0].Bars.Select(b => b.IsRest));

    // Common practice: the first beat is strong, and the third of four; in groups of two and three each group's first.
    [Theory]
    [InlineData(4, 4, "0 2")]
    [InlineData(3, 4, "0")]
    [InlineData(2, 4, "0")]
    [InlineData(5, 4, "0")]
    [InlineData(6, 8, "0 3/2")]
    [InlineData(7, 8, "0 1 2")]
    public void StrongBeats_AreThoseOfTheTrade(int count, int unit, string beats) =>
        Assert.Equal(beats, string.Join(' ', StrongBeats.Of(new Meter(count, unit)).Select(b => b.Denominator == 1 ? $"{b.Numerator}" : $"{b.Numerator}/{b.Denominator}")));

    private static RoadMap MapOf(string rules) => Sheets.Song(Sheets.Top + Riffs + $"roadmap map\n  {rules}\n").RoadMaps.Single();

    private static Song SongOf(string rules, int bars) => Sheets.Song(Sheets.Top + Riffs + $"roadmap map\n  {rules}\n\nsection All\n  guitar roadmap map {bars} bars\n");
}
