using System.Text.Json;
using Fretlore.Cli.Files;
using Fretlore.Tests.Outside;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore lesson</c>.</summary>
public sealed class LessonFacts : IDisposable
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo", "salt-furnace.lore");

    private readonly Desktop desktop = new();

    [Fact]
    public void StepThatTeachesAnUnknownName_IsOneMistake()
    {
        desktop.Write("odd.lore", Sheets.Top + "riff main\n  @6 W 0 |\n\nsection All\n  guitar  main\n\nlesson\n  step \"Main\" teach mian\n");
        Assert.Equal(1, desktop.Run("lesson", "odd.lore"));
        Assert.Contains("`mian` is no riff, section or road map of this sheet.", desktop.Error, StringComparison.Ordinal);
        Assert.EndsWith("No lesson was planned: 1 error in odd.lore.\n", desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ScratchFile_IsInNoFolder_AndHoldsWhatIsWrittenToIt()
    {
        var before = Directory.GetFiles(ScratchFile.Folder, "fretlore-*.tmp").ToHashSet();
        using var room = ScratchFile.Open();
        room.Write([1, 2, 3]);
        room.Position = 1;
        Assert.Equal(2, room.ReadByte());
        Assert.True(room is FileStream { Name: var name } && !before.Contains(name) && !File.Exists(name));
    }

    [Fact]
    public void Lesson_PrintsTheFilmMinuteByMinute_WhatIsMissing_AndTheCautions()
    {
        Assert.Equal(0, desktop.Run("lesson", Demo, "--minutes", "2"));
        Assert.Matches(@"^Salt Furnace: a film of (1:\d\d|2:00) in a budget of 2:00", desktop.Out);
        Assert.Contains("  0:00  Opening", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("1. Main riff: furnace. It comes six times, in the intro, the interlude and the outro.", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("No time for:", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("With one more minute: ", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("  teach ember ", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("stop when something hurts", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("get a licence from its publisher", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Lesson_AsJson_HasEveryWordAndTime()
    {
        Assert.Equal(0, desktop.Run("lesson", Demo, "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        var root = json.RootElement;
        var steps = root.GetProperty("steps").EnumerateArray().ToList();
        var sum = root.GetProperty("opening").GetProperty("seconds").GetDouble()
            + steps.Sum(s => s.GetProperty("saySeconds").GetDouble() + s.GetProperty("playSeconds").GetDouble());
        Assert.Equal(root.GetProperty("seconds").GetDouble(), sum, 1);
        Assert.True(sum <= 360);
        Assert.Equal("Keep one finger flat across the low three strings.", steps[0].GetProperty("says")[0].GetString());
        Assert.Equal("furnace", steps[1].GetProperty("needs")[0].GetString());
    }

    [Theory]
    [InlineData("0", "has room for nothing")]
    [InlineData("0:00", "has room for nothing")]
    [InlineData("-3", "no length of a film")]
    [InlineData("six", "no length of a film")]
    [InlineData("6:75", "no length of a film")]
    [InlineData("99999", "longer than a film can be planned")]
    public void TimeThatIsNone_IsAskedForAgain(string minutes, string says)
    {
        Assert.Equal(2, desktop.Run("lesson", Demo, $"--minutes={minutes}"));
        Assert.Contains(says, desktop.Error, StringComparison.Ordinal);
        Assert.Contains("6:30", desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void StepWithAnUnknownRiff_IsAnErrorThatSuggestsTheRightOne()
    {
        desktop.Write("song.lore", Sheets.Top + "riff furnace\n  @6 W 0 |\nsection A\n  guitar furnace\nlesson\n  step \"Main\" teach furnase\n");
        Assert.Equal(1, desktop.Run("lesson", "song.lore"));
        Assert.Contains("Perhaps `furnace` was meant.", desktop.Error, StringComparison.Ordinal);
        Assert.Contains("No lesson was planned", desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void KeptSteps_ThatDoNotFit_AreRefused()
    {
        desktop.Write("song.lore", Sheets.Top + "riff main\n  @6 W 0 |\nsection A\n  guitar main\nlesson\n  budget 0:05\n  step \"Main\" keep teach main\n");
        Assert.Equal(1, desktop.Run("lesson", "song.lore"));
        Assert.Contains("take `keep` off a step", desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void FilmLongerThanThereIsToTeach_KeepsTheTimeThatIsLeft()
    {
        Assert.Equal(0, desktop.Run("lesson", Demo, "--minutes", "60", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        Assert.True(json.RootElement.GetProperty("seconds").GetDouble() < 1200);
        Assert.Empty(json.RootElement.GetProperty("leftOut").EnumerateArray());
        Assert.Empty(json.RootElement.GetProperty("oneMoreMinute").EnumerateArray());
    }

    [Fact]
    public void Captions_AreWritten_AndRetimedToTheRecording()
    {
        Assert.Equal(0, desktop.Run("captions", Demo, "-o", "planned.vtt"));
        Assert.StartsWith("WEBVTT\n\n1\n00:00:00.000 --> ", desktop.Read("planned.vtt"), StringComparison.Ordinal);
        desktop.Write("recorded.txt", "0:03 Opening\n0:25 Main riff\n2:00 The turn\n3:30 Verse drone\n4:10 Chorus shapes\n4:50 Half-time hits\n5:40 Solo\n6:30 End\n");
        Assert.Equal(0, desktop.Run("captions", Demo, "--chapters", "recorded.txt", "-o", "recorded.vtt"));
        Assert.StartsWith("WEBVTT\n\n1\n00:00:03.000 --> ", desktop.Read("recorded.vtt"), StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("captions", Demo, "--step", "2", "-o", "step.vtt"));
        Assert.StartsWith("WEBVTT\n\n1\n00:00:00.000 --> ", desktop.Read("step.vtt"), StringComparison.Ordinal);
    }

    [Fact]
    public void CaptionsThatCanNotBe_AreRefusedWithTheLine()
    {
        desktop.Write("recorded.txt", "0:03 Opening\n0:25 Solo\n");
        Assert.Equal(2, desktop.Run("captions", Demo, "--chapters", "recorded.txt", "-o", "x.vtt"));
        Assert.Contains("recorded.txt:2: The plan's next chapter is “Main riff”.", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(2, desktop.Run("captions", Demo, "--step", "9", "-o", "x.vtt"));
        Assert.Contains("the film has no step 9", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(2, desktop.Run("captions", Demo, "--chapters", "none.txt", "-o", "x.vtt"));
        Assert.Contains("none.txt can't be read", desktop.Error, StringComparison.Ordinal);
        desktop.Write("silent.lore", Sheets.Top + "section A\n  guitar  @6 W 0 |\nlesson\n  step \"Quiet\" say \" \"\n");
        Assert.Equal(2, desktop.Run("captions", "silent.lore", "--step", "1", "-o", "x.vtt"));
        Assert.Contains("nothing is said or played in “Quiet”", desktop.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(desktop.PathOf("x.vtt")));
    }

    [Fact]
    public void Errata_ComparesTwoKits()
    {
        desktop.Write("song.lore", Sheets.WithLine("@6 Q 0 3 5 7 | W 0 |"));
        desktop.Run("kit", "song.lore", "-o", "one", "--no-sound");
        desktop.Write("song.lore", Sheets.WithLine("@6 Q 0 3 5 8 | W 0 |"));
        desktop.Run("kit", "song.lore", "-o", "two", "--no-sound");
        Assert.Equal(0, desktop.Run("errata", "one", "two/kit.json"));
        Assert.StartsWith("- Guitar: bar 1 (All) has changed.\n", desktop.Out, StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("errata", "one", "one"));
        Assert.Equal("The kits are the same.\n", desktop.Out);
        Assert.Equal(2, desktop.Run("errata", "one", "song.lore"));
        Assert.Contains("song.lore is no kit of Fretlore's.", desktop.Error, StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
