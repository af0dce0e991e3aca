using System.Text.Json;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore name</c> and <c>fretlore scale</c>.</summary>
public sealed class NameAndScaleFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void Name_AsJson_HasExactlyThePromisedFields()
    {
        Assert.Equal(0, desktop.Run("name", "x 3 2 0 1 0", "--tuning", "E2 A2 D3 G3 B3 E4", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        Assert.Equal(["candidates"], json.RootElement.EnumerateObject().Select(p => p.Name));
        var candidates = json.RootElement.GetProperty("candidates").EnumerateArray().ToList();
        Assert.All(candidates, c => Assert.Equal(
            ["symbol", "root", "kind", "bass", "notes", "reason"], c.EnumerateObject().Select(p => p.Name)));
        var best = candidates[0];
        Assert.Equal("C", best.GetProperty("symbol").GetString());
        Assert.Equal("C", best.GetProperty("root").GetString());
        Assert.Equal("", best.GetProperty("kind").GetString());
        Assert.Equal("C", best.GetProperty("bass").GetString());
        Assert.Equal(["C", "E", "G"], best.GetProperty("notes").EnumerateArray().Select(n => n.GetString()));
        Assert.NotEmpty(best.GetProperty("reason").GetString()!);
    }

    [Fact]
    public void Scale_AsJson_HasExactlyThePromisedFields()
    {
        Assert.Equal(0, desktop.Run("scale", "A C D E G", "--root", "A", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        Assert.Equal(["candidates"], json.RootElement.EnumerateObject().Select(p => p.Name));
        var candidates = json.RootElement.GetProperty("candidates").EnumerateArray().ToList();
        Assert.All(candidates, c => Assert.Equal(
            ["name", "root", "missing", "outside", "reason"], c.EnumerateObject().Select(p => p.Name)));
        Assert.Contains("pentatonic", candidates[0].GetProperty("name").GetString(), StringComparison.OrdinalIgnoreCase);
        Assert.Equal("A", candidates[0].GetProperty("root").GetString());
        Assert.Empty(candidates[0].GetProperty("missing").EnumerateArray());
        Assert.Empty(candidates[0].GetProperty("outside").EnumerateArray());
    }

    [Fact]
    public void Name_TakesTheShapeWithOrWithoutQuotes()
    {
        desktop.Run("name", "x 3 2 0 1 0");
        var quoted = desktop.Out;
        desktop.Run("name", "x", "3", "2", "0", "1", "0");
        Assert.Equal(quoted, desktop.Out);
        desktop.Run("name", "x32010");
        Assert.Equal(quoted, desktop.Out);
        Assert.StartsWith("C ", quoted, StringComparison.Ordinal);
    }

    [Fact]
    public void Name_WithACapo_NamesWhatSounds()
    {
        Assert.Equal(0, desktop.Run("name", "x 3 2 0 1 0", "--capo", "2"));
        Assert.StartsWith("D ", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Name_InAKey_IsSpelledFromIt()
    {
        desktop.Run("name", "x 1 3 3 2 1", "--key", "F major");
        Assert.StartsWith("Bbm", desktop.Out, StringComparison.Ordinal);
        desktop.Run("name", "x 1 3 3 2 1", "--key", "E major");
        Assert.StartsWith("A#m", desktop.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("name", "x 3 2 0 1")]
    [InlineData("name", "x 3 2 0 1 q")]
    [InlineData("name", "x 3 2 0 1 0", "--tuning", "E2 A2")]
    [InlineData("name", "x 3 2 0 1 0", "--tuning", "E A D G B E")]
    [InlineData("name", "x 3 2 0 1 0", "--capo", "40")]
    [InlineData("name", "x 3 2 0 1 0", "--capo", "two")]
    [InlineData("name", "x 3 2 0 1 0", "--key", "H")]
    [InlineData("name")]
    [InlineData("scale")]
    [InlineData("scale", "A C H")]
    [InlineData("scale", "A C", "--root", "Q")]
    [InlineData("scale", "A C", "--fancy")]
    [InlineData("nmae", "x32010")]
    [InlineData()]
    public void WrongUse_Answers2_AndSaysWhyOnTheErrorStream(params string[] arguments)
    {
        Assert.Equal(2, desktop.Run(arguments));
        Assert.Empty(desktop.Out);
        Assert.StartsWith("fretlore: ", desktop.Error, StringComparison.Ordinal);
        Assert.True(desktop.Error.Split('\n').Length >= 3, desktop.Error);
    }

    [Fact]
    public void Misread_IsShownWithAMarkerUnderIt()
    {
        desktop.Run("name", "x 3 two 0 1 0");
        Assert.Contains("    x 3 two 0 1 0\n        ^^^\n", desktop.Error, StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
