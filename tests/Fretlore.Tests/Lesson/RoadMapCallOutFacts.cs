using Fretlore.Hands.Plans;
using Fretlore.Lesson.CallOuts.RoadMaps;
using Fretlore.Lesson.Captions;
using Fretlore.Lesson.Diagrams;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Prompter;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Tests.RoadMaps;
using Fretlore.Tests.Songs;
using Fretlore.Workspace;

namespace Fretlore.Tests.Lesson;

/// <summary>What a teacher says of a free stretch: every rule, a breath at a time.</summary>
public sealed class RoadMapCallOutFacts(ITestOutputHelper output)
{
    // Spoken numbers up to the last fret, written out here so that they are not the tool's own.
    private static readonly string[] Numbers = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty twenty-one twenty-two twenty-three twenty-four".Split(' ');

    // Words in a breath: common practice for spoken text is under twenty.
    private const int WordsInABreath = 18;

    [Fact]
    public void EveryRuleOfAMap_IsSaid_InBreathsThatCanBeSpoken()
    {
        foreach (var map in VariedMaps.All)
        {
            var song = SongWorkspace.Open(new SourceText(map.Sheet, "map.lore")).Song!;
            var callOut = Assert.Single(RoadMapTeller.For(song));
            output.WriteLine($"{map.Name}: {callOut.Headline} / {callOut.WalkThrough}");
            Assert.InRange(callOut.Headline.Breaths.Count, 2, 3);
            Assert.All(callOut.Headline.Breaths.Concat(callOut.WalkThrough.Breaths), breath => Assert.True(breath.Split(' ').Length <= WordsInABreath, breath));
            Assert.All(callOut.Headline.Breaths.Concat(callOut.WalkThrough.Breaths), breath => Assert.DoesNotContain(breath, char.IsDigit));
            Assert.All(callOut.Headline.Breaths.Concat(callOut.WalkThrough.Breaths), breath => Assert.DoesNotContain("#", breath, StringComparison.Ordinal));
            foreach (var rule in song.RoadMaps[0].Rules)
            {
                var words = Must(rule).ToList();
                // In one breath, or in the next where one is too short.
                var breaths = callOut.WalkThrough.Breaths;
                Assert.True(Enumerable.Range(0, breaths.Count).Any(i => words.All(word => Has(string.Join(' ', breaths.Skip(i).Take(2)), word))),
                    $"{map.Name}: {rule}: not said together: {string.Join(", ", words)}\n{callOut.WalkThrough}");
            }
        }
    }

    [Fact]
    public void TheHeadline_SaysHowMuchIsFree_TheNotesAndTheWay_TheTargetsAndTheEnd()
    {
        var callOut = Assert.Single(RoadMapTeller.For(DemoSongs.Load("kestrel-over-slate.lore")));
        Assert.Equal("One bar is fixed, seven are free: no set notes, but rules. D minor pentatonic, from fret fifteen to fret five. "
            + "Land on A in bar four and on D in bar eight, and end on D.", callOut.Headline.ToString());
    }

    [Fact]
    public void RhythmCells_AreSaidAsGroups()
    {
        var callOut = Assert.Single(RoadMapTeller.For(DemoSongs.Load("kestrel-over-slate.lore")));
        Assert.Contains("In bars two to seven build the rhythm from two eighths; or an eighth and two sixteenths.", callOut.WalkThrough.Breaths);
        Assert.Contains("Or from two sixteenths and an eighth; a dotted quarter and an eighth; triplets; or a quarter.", callOut.WalkThrough.Breaths);
    }

    [Fact]
    public void Targets_AreSaidInTheOrderOfTheirBars()
    {
        var map = new RoadMap { Name = "way", Rules = [new AimRule(new NoteName(Step.C)), new AimRule(new NoteName(Step.D), Bars: StretchBars.Final(1)), new AimRule(new NoteName(Step.E), Bars: StretchBars.Of(2, 2))] };
        var song = DemoSongs.Load("kestrel-over-slate.lore") with { RoadMaps = [map], RoadMapUses = [new RoadMapUse("way", 0, 0, 4)] };
        Assert.Equal("Aim for E in bar two. Aim for D in the last bar. Aim for C.", Assert.Single(RoadMapTeller.For(song)).WalkThrough.ToString());
    }

    [Fact]
    public void AStepThatTeachesARoadMap_SaysIt_OnThePrompterAndInCaptions()
    {
        var song = DemoSongs.Load("kestrel-over-slate.lore");
        song = song with { Lesson = new LessonPlan(null, [new LessonStep("The way down", [new Taught("descent")], [], null)]) };
        var reading = SongReader.Read(song);
        var (played, hands) = (Performer.Play(song), HandPlanner.Plan(song));
        var plan = Assert.IsType<FilmPlanResult.Made>(FilmPlanner.Plan(played, reading, hands)).Plan;
        var walked = Assert.Single(RoadMapTeller.For(song)).WalkThrough;
        var captions = string.Join(' ', CaptionMaker.OfFilm(plan).Captions.SelectMany(c => c.Lines));
        var prompter = PrompterPage.Write(song, plan, new StepDiagrams(song, hands)).Replace("\\u0027", "'", StringComparison.Ordinal);
        foreach (var breath in walked.Breaths)
        {
            Assert.Contains(breath, captions, StringComparison.Ordinal);
            Assert.Contains(breath, prompter, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void ARoadMapThatNoStepTeaches_IsInTheScriptForWhoeverAsks()
    {
        var song = DemoSongs.Load("kestrel-over-slate.lore");
        song = song with { Lesson = new LessonPlan(null, [new LessonStep("Theme", [new Taught("kestrel")], [], null)]) };
        var script = Fretlore.Lesson.Script.ScriptWriter.Write(song, SongReader.Read(song));
        Assert.Contains("### Descent\n\n**In short.** One bar is fixed, seven are free", script[script.IndexOf("## Not in the lesson", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    // What can't be left out of the words for a rule: every name and number it has.
    private static IEnumerable<string> Must(RoadMapRule rule)
    {
        foreach (var word in OfKind(rule)) yield return word;
        if (rule.Bars is not { } bars) yield break;
        foreach (var range in bars.Ranges)
        {
            if (range.First < 0) yield return range.First == -1 ? "last bar" : Numbers[-range.First];
            else yield return Numbers[range.First];
            if (range.Last > 0) yield return Numbers[range.Last];
        }
    }

    private static IEnumerable<string> OfKind(RoadMapRule rule) => rule switch
    {
        FixedRule phrase => [phrase.Riff.Replace('-', ' ').Replace('.', ' ')],
        ScaleRule scale => [$"{Spoken(scale.Tonic)} {scale.Name}"],
        RolesRule roles => roles.Roles.Select(r => r.ToString().ToLowerInvariant()),
        StringsRule strings => [Numbers[strings.Highest.Value], Numbers[strings.Lowest.Value]],
        FretsRule frets => [frets.From.IsOpen ? "open strings" : Numbers[frets.From.Number], Numbers[frets.To.Number]],
        ContourRule contour => [contour.Shape switch { Contour.Rising => "climb", Contour.Falling => "fall", Contour.Arch => "top", Contour.Valley => "bottom", Contour.Level => "one height", _ => "in turn" }],
        DensityRule density => [density.Slowest.ToString().ToLowerInvariant(), density.Fastest.ToString().ToLowerInvariant()],
        RhythmRule rhythm => rhythm.Cells.SelectMany(c => c.Tuplet is null ? c.Values.Select(v => v.Base.ToString().ToLowerInvariant()) : ["triplet"]).Distinct(),
        LickRule licks => licks.Riffs.Select(r => r.Replace('-', ' ').Replace('.', ' ')),
        AimRule aim => [Spoken(aim.Target), .. aim.Beat is { } beat ? [$"beat {Numbers[beat]}"] : Array.Empty<string>(), .. aim.String is { } on ? [$"string {Numbers[on.Value]}"] : Array.Empty<string>(), .. How(aim.How)],
        AvoidRule avoid => avoid.What.Select(w => w is Avoided.Note note ? Spoken(note.Name) : w.ToString()),
        EndRule end => [Spoken(end.Target), .. How(end.How), .. end.IsHeld ? ["ring"] : Array.Empty<string>()],
        _ => throw new InvalidOperationException($"{rule} has no words yet."),
    };

    private static IEnumerable<string> How(Approach? how)
    {
        if (how is null) yield break;
        yield return how.Kind switch { ApproachKind.Bend => "bend", ApproachKind.Slide => "slide", ApproachKind.HammerOn => "hammer-on", ApproachKind.PullOff => "pull-off", _ => "from" };
        if (how.Semitones is { } size) yield return size == 1 ? "half" : "whole";
        if (how.From is { } from) yield return Spoken(from);
        else if (how.Side is { } side && how.Kind != ApproachKind.Bend) yield return side.ToString().ToLowerInvariant();
    }

    private static string Spoken(NoteName name) => name.ToString() is { Length: > 1 } text ? $"{text[0]} {(text[1] == '#' ? "sharp" : "flat")}" : name.ToString();

    private static bool Has(string breath, string word) => breath.Contains(word, StringComparison.OrdinalIgnoreCase);
}
