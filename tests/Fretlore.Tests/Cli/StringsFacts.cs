using System.Text.Json;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore strings</c>.</summary>
public sealed class StringsFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void Strings_SaysGaugesAndTensions_InBothUnits()
    {
        Assert.Equal(0, desktop.Run("strings", "--tuning", "E2 A2 D3 G3 B3 E4", "--scale-length", "25.5in", "--feel", "regular"));
        Assert.Matches(@"\n1 +E4 +\.010 +16\.2 +72\.1 ", desktop.Out);
        Assert.Matches(@"\n6 +E2 +\.046w +17\.5 +77\.7 ", desktop.Out);
        Assert.Matches(@"\nneck +103\.5 ", desktop.Out);
        Assert.DoesNotContain("Careful", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Strings_AsJson_HasEachStringsFigures_BeforeAndAfter()
    {
        Assert.Equal(0, desktop.Run(
            "strings", "--tuning", "B1 E2 A2 D3 F#3 B3", "--gauges", "46w 36w 26w 17 13 10", "--now-tuning", "E2 A2 D3 G3 B3 E4", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        var low = json.RootElement.GetProperty("strings").EnumerateArray().Last();
        Assert.Equal(6, low.GetProperty("string").GetInt32());
        Assert.Equal("wound", low.GetProperty("make").GetString());
        Assert.Equal(9.81, low.GetProperty("tensionLbf").GetDouble(), 0.02); // 17.47 lbf down a fourth: times 2^(-10/12)
        Assert.Equal(17.47, low.GetProperty("beforeLbf").GetDouble(), 0.01);
        Assert.Equal(JsonValueKind.Null, low.GetProperty("shareOfBreaking").ValueKind);
        Assert.Contains("loadMoves", json.RootElement.GetProperty("remarks").EnumerateArray().Select(r => r.GetProperty("concern").GetString()));
    }

    [Theory]
    [InlineData("G4")]
    [InlineData("G4 C4 E4 A4")]
    [InlineData("E2 E3 A2 A3 D3 D4 G3 G4 B3 B3 E4 E4")]
    [InlineData("E1 A1 D2 G2")]
    public void Strings_TakesAnyTuning_ReentrantAndRepeatedToo(string tuning)
    {
        Assert.Equal(0, desktop.Run("strings", "--tuning", tuning, "--scale-length", "648mm"));
        Assert.Contains("\nneck ", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Strings_SaysWhenNoGaugeReachesTheTarget()
    {
        Assert.Equal(0, desktop.Run("strings", "--tuning", "E1", "--scale-length", "25.5in"));
        Assert.Contains("Careful: String 1 (.080w)", desktop.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--scale-length", "0in")]
    [InlineData("--scale-length", "-25.5in")]
    [InlineData("--scale-length", "25.5")]
    [InlineData("--scale-length", "in")]
    [InlineData("--scale-length", "9000mm")]
    [InlineData("--scale-length", "25.5in-")]
    [InlineData("--tuning", "")]
    [InlineData("--tuning", "E2 H2")]
    [InlineData("--tuning", "E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2")]
    [InlineData("--gauges", "46w 36w 26w 17 13")]
    [InlineData("--gauges", "46w 36w 26w 17 13 1")]
    [InlineData("--gauges", "46w 36w 26w 17 13 x")]
    [InlineData("--gauges", "47w 36w 26w 17 13 10")]
    [InlineData("--now", "200 36w 26w 17 13 10")]
    [InlineData("--now-tuning", "E2 A2")]
    [InlineData("--feel", "evne")]
    [InlineData("--feel", "900lbf")]
    [InlineData("--feel", "-3N")]
    public void WrongUse_IsSaidClearly(params string[] arguments)
    {
        Assert.Equal(2, desktop.Run(["strings", .. arguments]));
        Assert.Empty(desktop.Out);
        Assert.StartsWith("fretlore: ", desktop.Error, StringComparison.Ordinal);
        Assert.Contains("\n  ", desktop.Error, StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
