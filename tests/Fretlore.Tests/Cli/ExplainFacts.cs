using System.Text.Json;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore explain</c>.</summary>
public sealed class ExplainFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void ADemoSong_IsExplainedSectionBySection()
    {
        Assert.Equal(0, desktop.Run("explain", Demo("kestrel-over-slate")));
        Assert.StartsWith("Kestrel Over Slate\n  bars 0-32: D minor. The sheet says D minor.\n", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("\nTheme, bars 0-8\n", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("Dm  i, tonic: home. Root D in the bass with a minor third and a fifth.", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("D Minor pentatonic. The road map says D Minor pentatonic.", desktop.Out, StringComparison.Ordinal);
        Assert.Empty(desktop.Error);
    }

    [Fact]
    public void OneBar_IsExplainedAlone_AndAsJson()
    {
        Assert.Equal(0, desktop.Run("explain", Demo("kestrel-over-slate"), "--bar", "4", "--json"));
        using var json = JsonDocument.Parse(desktop.Out);
        Assert.Equal(["title", "keys", "sections"], json.RootElement.EnumerateObject().Select(p => p.Name));
        var section = Assert.Single(json.RootElement.GetProperty("sections").EnumerateArray());
        foreach (var part in section.GetProperty("parts").EnumerateArray())
        {
            Assert.Equal(["name", "title", "scales", "bars", "cadence"], part.EnumerateObject().Select(p => p.Name));
            Assert.Equal(4, Assert.Single(part.GetProperty("bars").EnumerateArray()).GetProperty("bar").GetInt32());
        }
        var bed = section.GetProperty("parts")[1].GetProperty("bars")[0];
        Assert.Equal(["C", "Gm7"], bed.GetProperty("chords").EnumerateArray().Select(c => c.GetProperty("symbol").GetString()));
        Assert.Equal(["bVII", "iv7"], bed.GetProperty("chords").EnumerateArray().Select(c => c.GetProperty("numeral").GetString()));
        Assert.Equal(3, bed.GetProperty("chords")[1].GetProperty("beat").GetDouble());
        var note = bed.GetProperty("notes")[0];
        Assert.Equal(["beat", "string", "fret", "pitch", "kind", "degree", "role", "finger", "position"], note.EnumerateObject().Select(p => p.Name));
        Assert.Equal("chord tone", note.GetProperty("kind").GetString());
        Assert.Equal("root", note.GetProperty("role").GetString());
    }

    [Theory]
    [InlineData("--bar", "99")]
    [InlineData("--bar", "-1")]
    [InlineData("--bar", "two")]
    public void ABarThatIsNotThere_IsWrongUse(params string[] options)
    {
        Assert.Equal(2, desktop.Run(["explain", Demo("kestrel-over-slate"), .. options]));
        Assert.Empty(desktop.Out);
        Assert.StartsWith("fretlore: ", desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ASheetWithErrors_IsNotExplained_AndTheErrorsAreSaid()
    {
        desktop.Write("bad.lore", "title Bad\nwhat is this\n");
        Assert.Equal(1, desktop.Run("explain", "bad.lore"));
        Assert.Empty(desktop.Out);
        Assert.Contains("FL1010", desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ASheetThatIsNotThere_IsWrongUse() => Assert.Equal(2, desktop.Run("explain", "nowhere.lore"));

    public void Dispose() => desktop.Dispose();

    private static string Demo(string name) => Path.Combine(Repository.Root, "demo", name + ".lore");
}
