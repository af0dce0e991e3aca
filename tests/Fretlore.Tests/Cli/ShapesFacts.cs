using System.Text.Json;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore shapes</c>.</summary>
public sealed class ShapesFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void Shapes_PrintsFretsAndFingers_BestFirst()
    {
        Assert.Equal(0, desktop.Run("shapes", "C"));
        Assert.Matches(@"\Ashape +fingers\nx 3 2 0 1 0 +x 3 2 0 1 0 +position 1 +complete\n", desktop.Out);
        Assert.Contains("see them with --most 0", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Shapes_AsJson_CountsThemAll()
    {
        Assert.Equal(0, desktop.Run("shapes", "F#m11", "--tuning", "D2 A2 D3 G3 A3 D4", "--most", "3", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        Assert.Equal("F#m11", json.RootElement.GetProperty("chord").GetString());
        Assert.Equal(3, json.RootElement.GetProperty("shapes").GetArrayLength());
        Assert.True(json.RootElement.GetProperty("count").GetInt32() > 3);
        Assert.Equal(
            ["shape", "fingers", "position", "about", "effort", "lack"],
            json.RootElement.GetProperty("shapes")[0].EnumerateObject().Select(p => p.Name));
    }

    [Fact]
    public void AChordThatCantBeHeld_IsSaidToBeNone()
    {
        Assert.Equal(0, desktop.Run("shapes", "C13", "--tuning", "E2 A2"));
        Assert.StartsWith("No hand holds C13", desktop.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("H7")]
    [InlineData("")]
    [InlineData("C7wow")]
    [InlineData("C", "--hand", "huge")]
    [InlineData("C", "--from", "0")]
    [InlineData("C", "--from", "99")]
    [InlineData("C", "--most", "-1")]
    [InlineData("C", "--tuning", "E2 A")]
    [InlineData("C", "--capo", "-1")]
    public void WrongUse_IsSaidClearly(params string[] arguments)
    {
        Assert.Equal(2, desktop.Run(["shapes", .. arguments]));
        Assert.Empty(desktop.Out);
        Assert.StartsWith("fretlore: ", desktop.Error, StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
