using System.Text.Json;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore retune</c>.</summary>
public sealed class RetuneFacts : IDisposable
{
    private const string Drone = "drone{ @6 W 0 } @2 Q 3 5 6 5 |";

    private readonly Desktop desktop = new();

    [Fact]
    public void ANewSheet_IsWritten_AndPassesTheCheck()
    {
        desktop.Write("line.lore", Sheets.WithLine("@6 E 0 3 5 0 Q 3 R |"));
        Assert.Equal(0, desktop.Run("retune", "line.lore", "--to", "D2 A2 D3 G3 B3 E4", "-o", "drop.lore"));
        Assert.Contains("Guitar: nothing is lost; as hard as before", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("tuning  D2 A2 D3 G3 B3 E4", desktop.Read("drop.lore"), StringComparison.Ordinal);
        Assert.Contains("@6 E 2 5 7 2 Q 5 R |", desktop.Read("drop.lore"), StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("check", "drop.lore"));
    }

    [Fact]
    public void WithoutAnOutput_TheSheetIsPrinted_AndTheReportIsApart()
    {
        desktop.Write("line.lore", Sheets.WithLine(Drone));
        Assert.Equal(0, desktop.Run("retune", "line.lore", "--to", "G2 A2 D3 G3 B3 E4"));
        Assert.StartsWith("title", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("bar 1: E2 sounds an octave higher (string ", desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsLost_IsSaidPerBar_AsJsonToo()
    {
        desktop.Write("line.lore", Sheets.WithLine(Drone + " rest | " + Drone));
        Assert.Equal(0, desktop.Run("retune", "line.lore", "--to", "D2 A2 D3 G3 B3 E4", "--json", "-o", "new.lore"));
        using var json = JsonDocument.Parse(desktop.Out);
        var losses = json.RootElement.GetProperty("parts")[0].GetProperty("losses").EnumerateArray().ToList();
        Assert.Equal([1, 3], losses.Select(loss => loss.GetProperty("bar").GetInt32()));
        Assert.All(losses, loss => Assert.Equal("droneStopped", loss.GetProperty("kind").GetString()));
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("sheet").ValueKind);
    }

    [Fact]
    public void AKeyOrACapo_ThatSavesMore_IsOffered_AndDoesWhatWasSaid()
    {
        desktop.Write("open.lore", Sheets.WithLine("@6-1 H let{ [0 2 2 1 0 0] [. 0 2 2 1 0] } |"));
        Assert.Equal(0, desktop.Run("retune", "open.lore", "--to", "D2 G2 C3 F3 A3 D4"));
        Assert.Contains("With the whole song 2 semitones down, nothing is lost: --transpose -2", desktop.Error, StringComparison.Ordinal);
        Assert.Contains("With the capo at fret 2, nothing is lost: --capo 2", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("retune", "open.lore", "--to", "D2 G2 C3 F3 A3 D4", "--transpose", "-2"));
        Assert.Contains("nothing is lost", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("retune", "open.lore", "--to", "D2 G2 C3 F3 A3 D4", "--capo", "2"));
        Assert.Contains("nothing is lost", desktop.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("5-3", "B1 E2 A2 D3 G3 B3 E4", "capo    2 on 5-3", null)]
    [InlineData("5-3", "E1 A1 D2 G2", "capo    2 on 3-1", "Guitar: the capo at fret 2 on strings 5-3 lies on strings 3-1 now.")]
    [InlineData("6-5", "D3 G3 B3 E4", null, "Guitar: the capo at fret 2 on strings 6-5 is taken off, because the new tuning has no neighbouring strings in place of its own; the notes are placed without it.")]
    [InlineData("4-1", "D3 G3 B3 E4", null, "Guitar: the capo at fret 2 on strings 4-1 is taken off, because the new tuning has no neighbouring strings in place of its own; the notes are placed without it.")]
    public void APartialCapo_GoesAlongWithItsStrings_OrIsTakenOffWithAReason(string strings, string to, string? capo, string? said)
    {
        desktop.Write("half.lore", Sheets.WithLine("@4 Q 0 3 5 0 |").Replace("part guitar \"Guitar\"", $"capo 2 on {strings}\npart guitar \"Guitar\"", StringComparison.Ordinal));
        Assert.Equal(0, desktop.Run("retune", "half.lore", "--to", to, "-o", "new.lore"));
        if (capo is null) Assert.DoesNotContain("capo", desktop.Read("new.lore"), StringComparison.Ordinal);
        else Assert.Contains(capo, desktop.Read("new.lore"), StringComparison.Ordinal);
        if (said is null) Assert.DoesNotContain("capo", desktop.Out, StringComparison.Ordinal);
        else Assert.Contains(said, desktop.Out, StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("check", "new.lore"));
    }

    [Fact]
    public void ASheetThatIsThere_IsLeftAsItIs_UnlessItIsToBeReplaced()
    {
        desktop.Write("line.lore", Sheets.WithLine("@6 W 5 |"));
        desktop.Write("mine.lore", "mine");
        Assert.Equal(2, desktop.Run("retune", "line.lore", "--to", "D2 A2 D3 G3 B3 E4", "-o", "mine.lore"));
        Assert.Equal("mine", desktop.Read("mine.lore"));
        Assert.Equal(0, desktop.Run("retune", "line.lore", "--to", "D2 A2 D3 G3 B3 E4", "-o", "mine.lore", "--replace"));
        Assert.StartsWith("title", desktop.Read("mine.lore"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("E2 A2 D3")]
    [InlineData("E2 A2 D3 G3 B3 H4")]
    [InlineData("E4 B3 G3 D3 A2 E2")]
    [InlineData("")]
    [InlineData("E2 A2 D3 G3 B3 E9")]
    [InlineData("E2 A2 D3 G3 B3 E4", "--transpose", "40")]
    [InlineData("E2 A2 D3 G3 B3 E4", "--capo", "24")]
    [InlineData("E2 A2 D3 G3 B3 E4", "--part", "flute")]
    [InlineData("E2 A2 D3 G3 B3 E4", "-o", "new.txt")]
    [InlineData("E2 A2 D3 G3 B3 E4", "--hand", "huge")]
    public void WrongUse_Answers2_AndWritesNothing(string to, params string[] more)
    {
        desktop.Write("line.lore", Sheets.WithLine("@6 W 5 |"));
        Assert.Equal(2, desktop.Run(["retune", "line.lore", "--to", to, .. more]));
        Assert.Empty(desktop.Out);
        Assert.Single(desktop.Everything());
    }

    [Fact]
    public void ASheetWithErrors_Answers1()
    {
        desktop.Write("wrong.lore", "title\n???");
        Assert.Equal(1, desktop.Run("retune", "wrong.lore", "--to", "D2 A2 D3 G3 B3 E4"));
        Assert.Empty(desktop.Out);
    }

    [Fact]
    public void ABanjosTuning_WithAHighStringBelow_IsFine()
    {
        desktop.Write("line.lore", Sheets.WithLine("@3 Q 0 2 4 5 |"));
        Assert.Equal(0, desktop.Run("retune", "line.lore", "--to", "G4 D3 G3 B3 D4", "-o", "banjo.lore"));
        Assert.Contains("nothing is lost", desktop.Out, StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
