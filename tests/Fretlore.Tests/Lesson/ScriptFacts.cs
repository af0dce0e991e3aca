using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.Script;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Lesson;

public class ScriptFacts
{
    [Theory]
    [MemberData(nameof(DemoCallOutFacts.Demos), MemberType = typeof(DemoCallOutFacts))]
    public void Script_OfADemo_IsTheSameTwiceAndHasEveryStepInOrder(string name)
    {
        var song = DemoCallOutFacts.Song(name);
        var script = ScriptWriter.Write(song, SongReader.Read(song));
        Assert.Equal(script, ScriptWriter.Write(DemoCallOutFacts.Song(name), SongReader.Read(song)));
        Assert.StartsWith($"# {song.Info.Title}\n", script);
        var from = 0;
        for (var i = 0; i < song.Lesson!.Steps.Count; i++)
        {
            from = script.IndexOf($"\n## {i + 1}. {song.Lesson.Steps[i].Title}\n", from, StringComparison.Ordinal);
            Assert.True(from > 0, song.Lesson.Steps[i].Title);
            if (song.Lesson.Steps[i].Say is { } say) Assert.Contains("> " + say, script[from..]);
        }
    }

    [Theory]
    [MemberData(nameof(DemoCallOutFacts.Demos), MemberType = typeof(DemoCallOutFacts))]
    public void Script_HasTheCallOutsOfEveryRiff_TaughtOrNot(string name)
    {
        var song = DemoCallOutFacts.Song(name);
        var reading = SongReader.Read(song);
        var script = ScriptWriter.Write(song, reading);
        foreach (var callOut in CallOutWriter.For(song, reading))
        {
            Assert.Contains(callOut.Headline.ToString(), script);
            Assert.Contains(callOut.WalkThrough.ToString(), script);
            Assert.Contains(callOut.NoteByNote.ToString(), script);
        }
    }

    [Fact]
    public void Script_TellsTheTuningStringByStringTheTempoAndTheSpeeds()
    {
        var song = DemoCallOutFacts.Song("salt-furnace.lore");
        var script = ScriptWriter.Write(song, SongReader.Read(song));
        Assert.Contains("Tune seven strings, from low to high. Low string, the seventh: A. Sixth string: E.", script);
        Assert.Contains("No capo.", script);
        Assert.Contains("The tempo is 112 quarters a minute, in four four, in A dorian.", script);
        // 60 percent of 112 is 67.2, 80 percent 89.6.
        Assert.Contains("Teach it at 60 percent, 67 quarters a minute; at 80 percent, 90 quarters a minute; at full speed, 112 quarters a minute.", script);
        Assert.Contains("- Intro, bars 1 to 6 (Rhythm guitar)\n", script);
    }

    [Fact]
    public void Script_TellsWhichStringsAPartialCapoCovers()
    {
        var song = Sheets.Song("title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\ncapo 2 on 5-3\nriff ring\n  @4 Q 0 3 5 0 |\nsection All\n  ring times 2\n");
        Assert.Contains("Put the capo at fret two over strings five to three only. Frets are counted from the nut; on those strings, open means at the capo.", ScriptWriter.Write(song, SongReader.Read(song)));
        var moving = Sheets.Song("title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\nriff low\n  @4 Q 0 3 5 0 |\nriff high\n  capo 3\n  @4 Q 0 3 5 0 |\nsection All\n  low (capo 3) high\n");
        var script = ScriptWriter.Write(moving, SongReader.Read(moving));
        Assert.Equal(1, script.Split("**Capo.** Put the capo at fret three; all frets are counted from there.").Length - 1);
        Assert.True(script.IndexOf("**Capo.**", StringComparison.Ordinal) > script.IndexOf("## 2. High", StringComparison.Ordinal));
    }

    [Fact]
    public void Script_WarnsOfStrainAndOfOtherPeoplesRights()
    {
        var script = ScriptWriter.Write(DemoCallOutFacts.Song("salt-furnace.lore"),
            SongReader.Read(DemoCallOutFacts.Song("salt-furnace.lore")));
        Assert.Contains("If anything hurts, tingles or goes numb, stop for the day.", script);
        Assert.Contains("may need a licence", script);
    }

    [Fact]
    public void Script_WithoutALesson_TeachesEachRiffInTheOrderItIsFirstPlayed()
    {
        var song = DemoCallOutFacts.Song("salt-furnace.lore") with { Lesson = null };
        var script = ScriptWriter.Write(song, SongReader.Read(song));
        int[] at = [.. new[] { "Furnace", "Ember", "Furnace turn", "Undertow", "Furnace solo" }
            .Select(h => script.IndexOf($". {h}\n\n**In short", StringComparison.Ordinal))];
        Assert.DoesNotContain(-1, at);
        Assert.Equal(at.Order(), at);
    }

    [Fact]
    public void Script_OfASongWithoutRiffs_SaysWhatIsMissing()
    {
        var song = new Songs.SongBuilder().Part("solo").Bar(Songs.SongBuilder.Play(ValueBase.Whole, (6, 3))).Build();
        var script = ScriptWriter.Write(song, SongReader.Read(song));
        Assert.Contains("nothing to call out yet", script);
        Assert.DoesNotContain("Note by note", script);
    }

    [Fact]
    public void Title_WithSignsOfMarkdown_ShowsAsTyped()
    {
        var song = new Songs.SongBuilder().Part("solo").Bar(Songs.SongBuilder.Rest(ValueBase.Whole)).Build("*Ash* & [Ember] #2");
        Assert.StartsWith("# \\*Ash\\* & \\[Ember\\] \\#2\n", ScriptWriter.Write(song, SongReader.Read(song)));
    }

    [Fact]
    public void RoadMap_IsWalkedThroughRuleByRule()
    {
        var map = new RoadMap
        {
            Name = "descent",
            Rules =
            [
                new FixedRule("furnace.turn", StretchBars.Of(1, 2)),
                new ScaleRule(new NoteName(Step.A), "dorian"),
                new StringsRule(new(1), new(4)),
                new FretsRule(new(14), new(4), true),
                new DensityRule(ValueBase.Eighth, ValueBase.Sixteenth),
                new AimRule(new NoteName(Step.E), new Approach(ApproachKind.Bend, 1, new NoteName(Step.D, 1)), 3, null, StretchBars.Of(6, 6)),
                new LickRule(["furnace.lick", "ember"], StretchBars.Of(3, 5)),
                new AvoidRule([new Avoided.Note(new NoteName(Step.B, -1)), new Avoided.OpenStrings()]),
                new ContourRule(Contour.Falling, StretchBars.Final(2)),
                new EndRule(new NoteName(Step.A), new Approach(ApproachKind.Slide, Side: Side.Below), new(3), true),
            ],
        };
        var song = DemoCallOutFacts.Song("salt-furnace.lore") with { RoadMaps = [map],
            Lesson = new LessonPlan(null, [new LessonStep("Descent", [new Taught("descent")], [], null)]) };
        var script = ScriptWriter.Write(song, SongReader.Read(song));
        Assert.Contains("In bars one and two play the phrase furnace turn as it stands. Play from A dorian. Stay on strings four to one. "
            + "Start around fret fourteen and get to fret four. In the last two bars let the line fall. Mostly eighths to sixteenths. "
            + "In bars three to five you may draw on furnace lick or ember. Aim for E on beat three in bar six, reached by a half-step bend of D sharp. "
            + "Keep away from B flat and open strings. End on A on string three, reached by a slide from below. Let it ring to the end.\n", script);
    }
}
