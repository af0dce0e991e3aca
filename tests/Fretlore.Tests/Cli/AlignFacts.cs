using System.Text.Json;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore align</c>.</summary>
public sealed class AlignFacts : IDisposable
{
    private const string Sheet = "title   Rung\ntuning  E2 A2 D3 G3 B3 E4\ntempo   Q = 110\n\nsection All\n  @5 Q 0 2 3 5 | @4 Q 2 3 5 7 | @3 Q 4 5 7 9 | @2 W 5 |\n";

    private readonly Desktop desktop = new();

    public AlignFacts()
    {
        desktop.Write("rung.lore", Sheet);
        Assert.Equal(0, desktop.Run("sound", "rung.lore", "-o", "rung.wav"));
    }

    public void Dispose() => desktop.Dispose();

    [Fact]
    public void TimesAreWrittenIntoTheSheet_WhichIsOtherwiseAsItWas()
    {
        Assert.Equal(0, desktop.Run("align", "rung.lore", "rung.wav", "--write"));
        Assert.StartsWith(Sheet + "\nrecording \"rung.wav\"\n  bar 1 at 0:0", desktop.Read("rung.lore"), StringComparison.Ordinal);
        Assert.Contains("4 of 4 bars", desktop.Out, StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("check", "rung.lore"));
    }

    [Fact]
    public void WithoutWriting_TheBlockIsPrintedAlone_AndTheSheetStays()
    {
        Assert.Equal(0, desktop.Run("align", "rung.lore", "rung.wav", "--name", "rung final.mp3"));
        Assert.StartsWith("recording \"rung final.mp3\"\n  bar 1 at", desktop.Out, StringComparison.Ordinal);
        Assert.Equal(Sheet, desktop.Read("rung.lore"));
    }

    [Fact]
    public void AsJson_EveryBarHasItsSeconds()
    {
        Assert.Equal(0, desktop.Run("align", "rung.lore", "rung.wav", "--json"));
        var bars = JsonDocument.Parse(desktop.Out).RootElement.GetProperty("bars").EnumerateArray().Select(bar => bar.GetProperty("seconds").GetDouble()).ToArray();
        var beat = 60.0 / 110;
        Assert.Equal(4, bars.Length);
        Assert.All(bars.Select((at, n) => at - n * 4 * beat), error => Assert.InRange(Math.Abs(error), 0, 0.03));
    }

    [Theory]
    [InlineData("rung.lore", "gone.wav", "gone.wav can't be read")]
    [InlineData("rung.lore", "rung.lore", "no sound file")]
    [InlineData("gone.lore", "rung.wav", "gone.lore")]
    public void WhatIsNotThere_OrIsNoSound_IsWrongUse(string sheet, string take, string message)
    {
        Assert.Equal(2, desktop.Run("align", sheet, take, "--write"));
        Assert.Contains(message, desktop.Error, StringComparison.Ordinal);
        Assert.Equal(Sheet, desktop.Read("rung.lore"));
    }
}
