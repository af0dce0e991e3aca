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
