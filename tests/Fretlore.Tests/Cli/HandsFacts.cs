using System.Text.Json;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore hands</c>.</summary>
public sealed class HandsFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void Hands_SaysFingersBarByBar_AndWarnsOfStrain()
    {
        desktop.Write("line.lore", Sheets.WithLine("E @6 5 8 @5 5 7 @4 5 7 @3 0 7 |"));
        Assert.Equal(0, desktop.Run("hands", "line.lore"));
        Assert.Contains("  1 4 1 3 1 3 - 3", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("stop when something hurts", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Hands_AsJson_HasEveryNote()
    {
        desktop.Write("line.lore", Sheets.WithLine("Q @6-1 [. 3 2 0 1 0] H. @1 5 |"));
        Assert.Equal(0, desktop.Run("hands", "line.lore", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        var notes = json.RootElement.GetProperty("parts")[0].GetProperty("bars")[0].GetProperty("notes").EnumerateArray().ToList();
        Assert.Equal(6, notes.Count);
        Assert.Equal(3, notes[0].GetProperty("finger").GetInt32());
        Assert.Equal(JsonValueKind.Null, notes[2].GetProperty("finger").ValueKind);
        Assert.Equal("1", notes[5].GetProperty("at").GetString());
    }

    [Fact]
    public void WhatNoHandCanHold_IsPointedAtInTheSheet()
    {
        desktop.Write("wide.lore", Sheets.WithLine("W @6-1 [1 . . . . 9] |"));
        Assert.Equal(0, desktop.Run("hands", "wide.lore", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        var found = Assert.Single(json.RootElement.GetProperty("diagnostics").EnumerateArray().ToList());
        Assert.Equal("FL4001", found.GetProperty("code").GetString());
        Assert.Equal(7, found.GetProperty("line").GetInt32());
    }

    /// <summary>Each finding of a hand once, with its code.</summary>
    [Theory]
    [InlineData("FL4001", "W @6-1 [1 3 . 5 7 8] |")]
    [InlineData("FL4002", "(Q = 240) Z @6 1 24 1 24 1 24 1 24 1 24 1 24 1 24 1 24 H. 24 |")]
    [InlineData("FL4003", "W @6-1 [1f3 . . . . 5f1] |")]
    [InlineData("FL4004", "drone{ @6 W 5 } @5-3 H [2 3 4] [6 7 8] |")]
    public void AFinding_HasItsCode(string code, string music)
    {
        desktop.Write("found.lore", Sheets.WithLine(music));
        desktop.Run("hands", "found.lore", "--json");
        Assert.Contains($"\"{code}\"", desktop.Out + desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ASheetWithErrors_Answers1()
    {
        desktop.Write("wrong.lore", "title\n???");
        Assert.Equal(1, desktop.Run("hands", "wrong.lore"));
        Assert.Empty(desktop.Out);
    }

    [Theory]
    [InlineData("none.lore")]
    [InlineData("line.lore", "--hand", "huge")]
    [InlineData("line.lore", "--part", "flute")]
    [InlineData]
    public void WrongUse_Answers2(params string[] arguments)
    {
        desktop.Write("line.lore", Sheets.WithLine("W @6 5 |"));
        Assert.Equal(2, desktop.Run(["hands", .. arguments]));
        Assert.Empty(desktop.Out);
    }

    public void Dispose() => desktop.Dispose();
}
