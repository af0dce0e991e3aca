using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Output;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Overlays;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Steps;
using Fretlore.Lesson.Subjects;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Lesson.Plans;

public class FilmPlanFacts
{
    private static readonly FontLibrary Fonts = new();

    private const string Song = Sheets.Top + """
        riff main
          @6 E 0 0 3 0 5 0 3 0 | @6 Q 0 3 H 5 |

        riff main.turn = main with bar 2: W 7 |

        section All
          guitar  main times 3, main.turn

        """;

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void Film_OfADemo_IsNeverLongerThanItsTime(string name)
    {
        var plans = Plans(DemoSongs.Load(name));
        for (var seconds = 1; seconds < 900; seconds += 37)
        {
            var plan = plans(TimeSpan.FromSeconds(seconds));
            Assert.True(plan.Seconds <= seconds, $"{plan.Seconds} > {seconds}");
            var at = plan.OpeningSeconds;
            foreach (var step in plan.Steps)
            {
                Assert.Equal(at, step.Start, 6);
                at += step.Seconds;
            }
        }
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void Film_OfADemo_IsTheBestOfAllThereAre_AndSoIsWhatOneMoreMinuteBuys(string name)
    {
        var plans = Plans(DemoSongs.Load(name));
        var all = plans(TimeSpan.FromHours(1));
        TeachingStep[] steps = [.. all.Steps.Select(s => s.Step)];
        Assert.All(steps, s => Assert.Equal(steps[0].Neck, s.Neck));
        for (var minutes = 1; minutes <= 12; minutes++)
        {
            var plan = plans(TimeSpan.FromMinutes(minutes));
            Assert.Equal(Films(steps, all.OpeningSeconds, minutes * 60).Max(Worth), plan.Steps.Sum(s => StepWorth.Of(s.Step, s.Version.Length)));
            var longest = steps.Sum(s => s.Versions.Max(v => StepWorth.Of(s, v.Length)));
            if (plan.Steps.Sum(s => StepWorth.Of(s.Step, s.Version.Length)) == longest)
            {
                Assert.Empty(plan.OneMoreMinute);
                continue;
            }
            int[] now = [.. steps.Select(s => plan.Steps.FirstOrDefault(p => p.Step.Title == s.Title) is { } p ? s.Versions.ToList().FindIndex(v => v.Length == p.Version.Length) : -1)];
            var then = Films(steps, all.OpeningSeconds, minutes * 60 + 60).ToArray();
            var adding = then.Where(f => f.Zip(now).All(o => o.First >= o.Second)).ToArray();
            var best = adding.Max(Worth) > Worth(now) ? adding.Max(Worth) : then.Max(Worth);
            var told = string.Join(' ', plan.OneMoreMinute);
            if (best == Worth(now))
            {
                Assert.Equal("One more minute is not enough for anything that is missing.", told);
                continue;
            }
            // The film that the words make of this one is worth as much.
            var made = now.Zip(steps).Select(o => told.Contains($"“{o.Second.Title}” would make room", StringComparison.Ordinal) ? -1
                : o.Second.Versions.ToList().FindIndex(v => told.Contains($"“{o.Second.Title}” would be {(o.First < 0 ? "in, " : "told ")}{FilmPlanning.Words(v.Length)}", StringComparison.Ordinal)) is >= 0 and var longer ? longer : o.First).ToArray();
            Assert.Equal(best, Worth(made));
        }

        int Worth(int[] film) => film.Zip(steps).Sum(o => o.First < 0 ? 0 : StepWorth.Of(o.Second, o.Second.Versions[o.First].Length));
    }

    // Every choice of lengths that keeps the time, in tenths of a second rounded up, and has what each step needs; -1 is left out.
    private static IEnumerable<int[]> Films(TeachingStep[] steps, double opening, int seconds)
    {
        var film = Enumerable.Repeat(-1, steps.Length).ToArray();
        while (true)
        {
            var tenths = film.All(o => o < 0) ? 0 : Tenths(opening) + film.Zip(steps).Sum(o => o.First < 0 ? 0 : Tenths(o.Second.Versions[o.First].Seconds));
            var isSound = film.Zip(steps).All(o => o.First < 0 ? !o.Second.IsKept : o.Second.Needs.All(need => Array.FindIndex(steps, s => s.Teaches.Contains(need)) is var at && (at < 0 || film[at] >= 0)));
            if (tenths <= seconds * 10 && isSound) yield return [.. film];
            var place = 0;
            while (place < film.Length && ++film[place] == steps[place].Versions.Count) film[place++] = -1;
            if (place == film.Length) yield break;
        }

        static int Tenths(double time) => (int)Math.Ceiling(time * 10 - 1e-6);
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void MoreTime_IsNeverWorthLess(string name)
    {
        var plans = Plans(DemoSongs.Load(name));
        var worth = Enumerable.Range(1, 12).Select(minutes => plans(TimeSpan.FromMinutes(minutes)).Steps.Sum(s => StepWorth.Of(s.Step, s.Version.Length))).ToArray();
        Assert.Equal(worth.Order(), worth);
    }

    [Fact]
    public void SpeakingTakesTheWordsAtTheTeachersRate_AndPlayingTheBarsAtTheTempo()
    {
        var song = Sheets.Song(Song + "lesson\n  speaking-rate 60\n  step \"Main\" as headline teach main at 50% say \"Now four words more.\"\n");
        var step = Assert.Single(Plan(song).Steps);
        // At 60 words a minute a word takes a second.
        Assert.Equal(step.Version.Says.WordCount, step.Version.SaySeconds, 6);
        // A bar of counting in and two bars twice: five bars of four quarters, each quarter a second at half of 120.
        Assert.Equal(20, step.Version.PlaySeconds, 6);
        Assert.Equal("Now four words more.", step.Version.Says.Breaths[0]);
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void PlayingTakesAsLongAsItIsThenRendered_WithinATenth(string name)
    {
        var song = DemoSongs.Load(name);
        song = song with { Lesson = song.Lesson! with { Budget = null } };
        var compared = 0;
        foreach (var step in Plan(song).Steps)
        {
            if (step.Step.Subjects is not [{ Kind: SubjectKind.Riff } subject]) continue;
            var riff = subject.Lines[0].Riff;
            foreach (var play in step.Version.Plays)
            {
                // The loop of the kit is as long as its bars; on film a bar of counting in comes first.
                var ready = Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(song, new SoundRequest { Riff = riff.Name, Speed = play.Percent / 100m, Loop = true }));
                var countIn = riff.Bars[0].Meter.Length.ToDouble() * play.Tempo.SecondsPerQuarter;
                var rendered = countIn + play.Times * ready.Mix.Seconds;
                Assert.InRange(play.Seconds, rendered * 0.9, rendered * 1.1);
                // So does the moving tab.
                using var overlay = TabOverlay.Of(song, riff, play, FilmFrame.All[0], 30, Fonts, PictureGround.Clear)!;
                Assert.InRange(play.Seconds, overlay.FrameCount / 30.0 * 0.9, overlay.FrameCount / 30.0 * 1.1);
                compared++;
            }
        }
        Assert.True(compared > 0);
    }

    [Theory]
    [MemberData(nameof(DemoSongs.Names), MemberType = typeof(DemoSongs))]
    public void PlayingASectionOrARoadMap_TakesAsLongAsItIsThenHeard_WithinATenth(string name)
    {
        var song = DemoSongs.Load(name);
        Taught[] what = [.. song.Sections.Select(s => new Taught(s.Name)), .. song.RoadMapUses.Select(u => new Taught(u.RoadMap)).Distinct()];
        song = song with { Lesson = new LessonPlan(null, [.. what.Select(t => new LessonStep(t.Name, [t], [100, 70], null))]) };
        foreach (var step in Plan(song).Steps)
        {
            var place = step.Step.Subjects[0].Places[0];
            foreach (var play in step.Version.Plays)
            {
                var request = step.Step.Subjects[0].Kind == SubjectKind.Section ? new SoundRequest { Section = step.Step.Title }
                    : new SoundRequest { FromBar = song.Bars[place.FirstBar].Number, ToBar = song.Bars[place.FirstBar + place.BarCount - 1].Number };
                var ready = Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(song, request with { Speed = play.Percent / 100m, Loop = true }));
                var heard = song.Bars[place.FirstBar].Meter.Length.ToDouble() * play.Tempo.SecondsPerQuarter + play.Times * ready.Mix.Seconds;
                Assert.InRange(play.Seconds, heard * 0.9, heard * 1.1);
            }
        }
    }

    [Fact]
    public void Lengths_SayAndPlayMoreAndMore()
    {
        var song = Sheets.Song(Song + "lesson\n  step \"Main\" teach main at 50% 75% 100%\n");
        var versions = Assert.Single(Plan(song).Steps).Step.Versions;
        Assert.Equal([1, 2, 3], versions.Select(v => v.Plays.Count));
        Assert.True(versions[0].Seconds < versions[1].Seconds && versions[1].Seconds < versions[2].Seconds);
    }

    [Fact]
    public void StepAsHeadline_StaysOne_HoweverMuchTimeThereIs()
    {
        var song = Sheets.Song(Song + "lesson\n  step \"Main\" teach main as headline\n");
        Assert.Equal(StepLength.Headline, Assert.Single(Plan(song, TimeSpan.FromHours(1)).Steps).Version.Length);
    }

    [Fact]
    public void VariationIsLeftOut_WhenThereIsNoTimeForItsModel()
    {
        var song = Sheets.Song(Song + "lesson\n  step \"Turn\" teach main.turn\n  step \"Main\" teach main as note-by-note\n");
        var plans = Plans(song);
        for (var seconds = 5; seconds < 240; seconds += 9)
        {
            var titles = plans(TimeSpan.FromSeconds(seconds)).Steps.Select(s => s.Step.Title).ToArray();
            Assert.True(!titles.Contains("Turn") || titles.Contains("Main"), string.Join(',', titles));
        }
        Assert.Contains("“Turn” builds on main, which a later step teaches: move it after that one.", Plan(song).Remarks);
    }

    [Fact]
    public void KeptSteps_WithoutTheTimeForThem_AreRefusedWithTheTimeTheyNeed()
    {
        var song = Sheets.Song(Song + "lesson\n  budget 0:10\n  step \"Main\" keep teach main\n");
        var refused = Assert.IsType<FilmPlanResult.Refused>(Result(song));
        Assert.Contains("the film has 0:10", refused.Reason);
        var least = refused.Remedy.Split(' ')[3];
        Assert.IsType<FilmPlanResult.Made>(Result(song, TimeSpan.ParseExact(least, @"m\:ss", null)));
    }

    [Fact]
    public void TimeForNothing_SaysHowMuchTheShortestStepTakes()
    {
        var plan = Plan(Sheets.Song(Song + "lesson\n  step \"Main\" teach main\n"), TimeSpan.FromSeconds(3));
        Assert.Empty(plan.Steps);
        Assert.Equal(0, plan.Seconds);
        Assert.Contains("Nothing fits into 0:03", Assert.Single(plan.Remarks));
    }

    [Fact]
    public void OneMoreMinute_AddsAndTakesNothingAway()
    {
        var plans = Plans(DemoSongs.Load("salt-furnace.lore"));
        var bought = plans(TimeSpan.FromMinutes(4)).OneMoreMinute;
        Assert.NotEmpty(bought);
        Assert.All(bought, b => Assert.DoesNotContain("make room", b));
        Assert.Empty(plans(TimeSpan.FromMinutes(30)).OneMoreMinute);
    }

    [Fact]
    public void SongWithoutALesson_TeachesItsRiffs_EachAfterWhatItVaries()
    {
        var plan = Plan(DemoSongs.Load("salt-furnace.lore") with { Lesson = null });
        var order = plan.Steps.Select(s => s.Step.Title).ToList();
        Assert.Equal(10, order.Count);
        Assert.True(order.IndexOf("Furnace") < order.IndexOf("Furnace turn"));
        Assert.Contains(plan.Remarks, r => r.StartsWith("The sheet has no lesson block", StringComparison.Ordinal));
    }

    [Fact]
    public void StepOfRests_IsSaidInASentence_AndPlaysNothing()
    {
        const string Quiet = Song + "riff quiet\n  rest 2\nsection Break\n  guitar  quiet\n";
        var step = Assert.Single(Plan(Sheets.Song(Quiet + "lesson\n  step \"Quiet\" teach quiet as note-by-note\n")).Steps);
        Assert.Equal("Nothing to play: rest for two bars.", step.Version.Says.ToString());
        Assert.Empty(step.Version.Plays);
        Assert.Single(step.Step.Versions);
        Assert.Equal("It comes once, in the break.", step.Step.Subjects[0].Why.ToString());
        // Without a lesson in the sheet it is no step at all.
        Assert.DoesNotContain("Quiet", Plan(Sheets.Song(Quiet)).Steps.Select(s => s.Step.Title));
    }

    [Fact]
    public void SongWithoutRiffs_HasNothingToPlan_AndSaysSo()
    {
        var plan = Plan(Sheets.Line("@6 W 0 |"));
        Assert.Empty(plan.Steps);
        Assert.Contains("names no riffs", Assert.Single(plan.Remarks));
    }

    [Fact]
    public void StepOnAnotherNeck_SaysHowToTune_AndThatTakesTime()
    {
        var song = Sheets.Song("""
            title  Two Necks
            tuning E2 A2 D3 G3 B3 E4
            tempo  Q = 120
            part one "One"
            part two "Two"
              tuning D2 A2 D3 G3 B3 E4
            riff main
              @6 Q 0 3 5 3 |
            riff deep
              tuning D2 A2 D3 G3 B3 E4
              @6 Q 0 3 5 3 |
            section A
              one  main
              two  deep
            lesson
              step "Main" teach main
              step "Deep" teach deep
            """);
        var plan = Plan(song);
        Assert.Equal("This part has another tuning.", plan.Steps[1].Before.Breaths[0]);
        Assert.Contains("Low string, the sixth: D.", plan.Steps[1].Before.Breaths);
        Assert.True(plan.Steps[1].Seconds > plan.Steps[1].Version.Seconds + 5);
    }

    [Fact]
    public void SectionStep_SaysTheOrderOfItsRiffs()
    {
        var plan = Plan(Sheets.Song(Song + "lesson\n  step \"Main\" teach main\n  step \"Turn\" teach main.turn\n  step \"All\" teach All\n"));
        Assert.Contains("Main three times, then main turn.", plan.Steps[2].Version.Says.Breaths);
        Assert.Equal([100], plan.Steps[2].Version.Plays.Select(p => p.Percent));
    }

    private static FilmPlan Plan(Song song, TimeSpan? budget = null) => Assert.IsType<FilmPlanResult.Made>(Result(song, budget)).Plan;

    // The song is played, read and fingered once for all times.
    private static Func<TimeSpan, FilmPlan> Plans(Song song)
    {
        var (played, reading, hands) = (Performer.Play(song), SongReader.Read(song), HandPlanner.Plan(song));
        return budget => Assert.IsType<FilmPlanResult.Made>(FilmPlanner.Plan(played, reading, hands, budget)).Plan;
    }

    private static FilmPlanResult Result(Song song, TimeSpan? budget = null) =>
        FilmPlanner.Plan(Performer.Play(song), SongReader.Read(song), HandPlanner.Plan(song), budget);
}
