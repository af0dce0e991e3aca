using System.Text.Json;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore roadmap</c>.</summary>
public sealed class RoadMapFacts : IDisposable
{
    private readonly Desktop desktop = new();

    public RoadMapFacts() => desktop.Write("kestrel.lore", File.ReadAllText(Path.Combine(Repository.Root, "demo", "kestrel-over-slate.lore")));

    [Fact]
    public void Takes_AreWholeSheets_ThatPassTheCheck_AndAreTheSameForTheSameSeed()
    {
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "3", "--seed", "7"));
        Assert.Contains("descent-takes/descent-take-1.lore: easy, ", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("end D in bar 8", desktop.Out, StringComparison.Ordinal);
        var first = desktop.Read("descent-takes/descent-take-3.lore");
        Assert.Contains("lead  descent.take3", first, StringComparison.Ordinal);
        Assert.Contains("teach talon, descent.take3", first, StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("check", "descent-takes/descent-take-3.lore"));
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "3", "--seed", "7", "-o", "again"));
        Assert.Equal(first, desktop.Read("again/descent-take-3.lore"));
    }

    [Fact]
    public void TakesThatAreThere_AreLeftAsTheyAre_UnlessTheyAreToBeReplaced()
    {
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "1"));
        var before = desktop.Everything();
        Assert.Equal(2, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "2", "--seed", "9"));
        Assert.Contains("descent-take-1.lore is already there, so nothing was written", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(before, desktop.Everything());
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "1", "--seed", "9", "--replace"));
        Assert.NotEqual(before, desktop.Everything());
    }

    [Fact]
    public void WithoutTakes_ItSaysWhetherTheRulesCanBeKept()
    {
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent"));
        Assert.Contains("descent: 8 bars of Lead guitar in Solo, 1 fixed, 13 rules.", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("A solo can keep all of them.", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AnImpossibleRoadMap_IsRefused_WithTheRulesInConflict()
    {
        desktop.Write("bad.lore", desktop.Read("kestrel.lore").Replace("avoid   Eb, open strings", "avoid   A, open strings", StringComparison.Ordinal));
        Assert.Equal(1, desktop.Run("roadmap", "bad.lore", "descent", "--takes", "2"));
        Assert.Equal("""
            No solo keeps these rules together:
              aim A by a half-step bend of G# on beat 3 in bar 4
              avoid A, open strings, leaps over an octave
            Change one of them, or take one out; without any one of them the others can be kept.

            """.ReplaceLineEndings("\n"), desktop.Error);
        Assert.False(Directory.Exists(desktop.PathOf("descent-takes")));
    }

    [Fact]
    public void Json_HasPhrasesLicksAndTargets()
    {
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "2", "--level", "full", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        var takes = json.RootElement.GetProperty("takes").EnumerateArray().ToList();
        Assert.Equal(2, takes.Count);
        Assert.All(takes, take => Assert.Equal("fixed", take.GetProperty("phrases")[0].GetProperty("kind").GetString()));
        Assert.All(takes, take => Assert.Contains(take.GetProperty("targets").EnumerateArray(), t => t.GetProperty("rule").GetString()!.StartsWith("end D", StringComparison.Ordinal)));
    }

    [Fact]
    public void ThePhraseModel_CanBePrintedChangedAndUsed()
    {
        Assert.Equal(0, desktop.Run("roadmap", "--print-phrases"));
        var model = desktop.Out;
        desktop.Write("same.json", model);
        desktop.Write("bends.json", """{ "bend": 0, "bendSeconds": 0 }""");
        desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "1", "--level", "full", "-o", "usual");
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "1", "--level", "full", "-o", "same", "--phrases", "same.json"));
        Assert.Equal(desktop.Read("usual/descent-take-1.lore"), desktop.Read("same/descent-take-1.lore"));
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "1", "--level", "full", "-o", "other", "--phrases", "bends.json"));
        Assert.NotEqual(desktop.Read("usual/descent-take-1.lore"), desktop.Read("other/descent-take-1.lore"));
    }

    [Fact]
    public void ATake_KeepsAllRules_WhenItIsChecked()
    {
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "1", "--level", "full"));
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--check", "descent-takes/descent-take-1.lore"));
        Assert.StartsWith("descent-takes/descent-take-1.lore: all 13 rules of descent kept.", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("end D in bar 8", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ASoloAlone_IsToldWhatItKeepsAndBreaks_AndWhere()
    {
        desktop.Write("solo.lore", """
            title   By hand
            tuning  D2 A2 D3 G3 B3 E4
            tempo   Q = 92
            section Solo
              @2 E 15 13 @3 15 14 g12,14 12 Q 10v | @3 E 12 14 @2 10 13 @3 Q 14 12 | @3 S 10,12,10 @4 12 @3 Q 10 E 12+ 10 @4 Q 12v | @2 E 10 13 @3 12 10 Q 9 R |
              @1 E 10 8 @2 10 8 Q 10 R | @1 Q 8 @2 E 9 8 10 8 Q 6 | @2 E 8 6 @3 7 5 Q 7 @2 6 | @3 Q 5 5 H lo;7 |
            """);
        Assert.Equal(1, desktop.Run("roadmap", "kestrel.lore", "descent", "--check", "solo.lore"));
        Assert.Contains("kept    fixed dive in bar 1", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("broken  aim A by a half-step bend of G# on beat 3 in bar 4\n            bar 4: A comes on beat 1 only", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("broken  scale D minor pentatonic", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("bar 6, beat 2: Ab is not in D minor pentatonic", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("Licks: talon in bar 3, as it is.", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("end D in bar 8 on beat 3 (string 3, fret 7)", desktop.Out, StringComparison.Ordinal);
        desktop.Run("roadmap", "kestrel.lore", "descent", "--check", "solo.lore", "--json");
        using var json = JsonDocument.Parse(desktop.Out);
        Assert.False(json.RootElement.GetProperty("keepsAll").GetBoolean());
        var aim = json.RootElement.GetProperty("rules").EnumerateArray().Single(r => r.GetProperty("rule").GetString()!.StartsWith("aim A", StringComparison.Ordinal));
        Assert.Equal(4, aim.GetProperty("breaks")[0].GetProperty("bar").GetInt32());
    }

    [Fact]
    public void FromTakes_ARoadMapIsProposed_AsABlock_OrAsAWholeSheet()
    {
        Assert.Equal(0, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "4"));
        string[] takes = [.. Enumerable.Range(1, 4).Select(n => $"descent-takes/descent-take-{n}.lore")];
        Assert.Equal(0, desktop.Run(["roadmap", "--propose", .. takes, "--name", "descent"]));
        Assert.Contains("roadmap descent\n  fixed dive in bar 1\n  scale D minor pentatonic\n", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("4 takes of Lead guitar in Solo: bar 1 never changed, bars 2-8 wandered.", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run(["roadmap", "--propose", .. takes, "--name", "descent", "-o", "proposed.lore"]));
        Assert.Equal(0, desktop.Run("check", "proposed.lore"));
        Assert.Equal(0, desktop.Run("roadmap", "proposed.lore", "descent", "--check", takes[1]));
        Assert.Equal(0, desktop.Run("roadmap", "proposed.lore", "descent", "--takes", "1", "-o", "new"));
        Assert.Equal(2, desktop.Run("roadmap", "--propose", takes[0], takes[1]));
        Assert.Contains("Give three takes or more.", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(2, desktop.Run("roadmap", "--propose", takes[0], takes[0], takes[0]));
        Assert.Contains("The takes are all the same.", desktop.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("it is not clear where the solo begins", "rest 20", "D2 A2 D3 G3 B3 E4")]
    [InlineData("Carry the solo over first: fretlore retune.", "rest 8", "E2 A2 D3 G3 B3 E4")]
    [InlineData("Bar 1 of the solo is not as long as bar 1 of the road map.", "(meter 3/4) rest 8", "D2 A2 D3 G3 B3 E4")]
    public void ASoloThatDoesNotFit_IsRefused_WithWhatToDo(string said, string music, string tuning)
    {
        desktop.Write("solo.lore", $"title By hand\ntuning {tuning}\ntempo Q = 92\nsection Solo\n  {music}\n");
        Assert.Equal(2, desktop.Run("roadmap", "kestrel.lore", "descent", "--check", "solo.lore"));
        Assert.Contains(said, desktop.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "bent": 0 }""", "There is no weight \"bent\".")]
    [InlineData("""{ "answers": 3 }""", "\"answers\" is 3, and a share goes from 0 to 1.")]
    [InlineData("""{ "cells": [ { "cell": "XYZ", "bits": 1 } ] }""", "cells")]
    [InlineData("""{ "intervals": [ 1, 2 ] }""", "\"intervals\" needs 13 costs")]
    public void AWrongPhraseModel_IsRefused_WithItsPlace(string text, string said)
    {
        desktop.Write("wrong.json", text);
        Assert.Equal(2, desktop.Run("roadmap", "kestrel.lore", "descent", "--takes", "1", "--phrases", "wrong.json"));
        Assert.Contains(said, desktop.Error, StringComparison.Ordinal);
        Assert.Contains("--print-phrases", desktop.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("The sheet has no road map \"descend\".", "roadmap", "kestrel.lore", "descend")]
    [InlineData("is no number of takes", "roadmap", "kestrel.lore", "descent", "--takes", "0")]
    [InlineData("is no level", "roadmap", "kestrel.lore", "descent", "--level", "hardest")]
    [InlineData("is not played in a section \"Verse\"", "roadmap", "kestrel.lore", "descent", "--section", "Verse")]
    [InlineData("A sheet and the name of its road map are needed.", "roadmap", "kestrel.lore")]
    public void WrongUse_SaysWhatToDo(string said, params string[] arguments)
    {
        Assert.Equal(2, desktop.Run(arguments));
        Assert.Contains(said, desktop.Error, StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
