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

    /// <summary>The open strings under a capo at fret 2 of strings 5 to 3 are E B E A B E.</summary>
    [Fact]
    public void Name_UnderAPartialCapo_NamesWhatSounds()
    {
        Assert.Equal(0, desktop.Run("name", "0 0 0 0 0 0", "--capo", "2 on 5-3"));
        Assert.StartsWith("Esus4 ", desktop.Out, StringComparison.Ordinal);
        Assert.Equal(2, desktop.Run("name", "0 2 0 0 0 0", "--capo", "2 on 5-3"));
        Assert.Contains("Fret 2 of string 5 is not above the capo", desktop.Error, StringComparison.Ordinal);
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
    [InlineData("scale", "A")]
    [InlineData("scale", "A A A")]
    [InlineData("scale", "A dorain")]
    [InlineData("scale", "A qwerty")]
    [InlineData("name", "x x x x x x")]
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
    public void OneNote_IsNamedAsANote() => Says("D (one note)", "name", "x x 0 x x x");

    [Fact]
    public void AShapeNoHandHolds_IsNamedAllTheSame_WithAWordOfCaution()
    {
        Assert.Equal(0, desktop.Run("name", "1 12 3 15 2 9"));
        Assert.NotEmpty(desktop.Out);
        Assert.Equal("No hand of average size can hold 1 12 3 15 2 9 at once: these are the names of what would sound.\n", desktop.Error);
        Assert.Equal(0, desktop.Run("name", "1 3 3 2 1 1"));
        Assert.Empty(desktop.Error);
    }

    [Fact]
    public void TwelveNotesAtOnce_AreACluster() =>
        Says("C(cluster)", "name", "0 0 0 0 0 0 0 0 0 0 0 0", "--tuning", "C3 C#3 D3 D#3 E3 F3 F#3 G3 G#3 A3 A#3 B3");

    [Fact]
    public void TwelveNotesOfAScale_AreTheChromaticScale_ToldOnce()
    {
        Says("C Chromatic", "scale", "C C# D D# E F F# G G# A A# B");
        Assert.Single(desktop.Out.Split('\n'), line => line.Contains("Chromatic", StringComparison.Ordinal));
    }

    [Fact]
    public void ARootThatIsNotPlayed_IsSaid() => Says("the root itself does not sound", "scale", "A C D", "--root", "F");

    [Fact]
    public void AScaleByName_TellsItsNotes() => Says("A Dorian has the notes A B C D E F# G, the degrees 1 2 b3 4 5 6 b7.", "scale", "A dorian");

    [Theory]
    [InlineData("A dorain", "Did you mean \"A Dorian\"?")]
    [InlineData("F# melodic minro", "Did you mean \"F# Melodic minor\"?")]
    [InlineData("A", "Type two notes or more")]
    public void AScaleThatIsNotKnown_GetsTheNearestName(string typed, string remedy)
    {
        Assert.Equal(2, desktop.Run("scale", typed));
        Assert.Contains(remedy, desktop.Error, StringComparison.Ordinal);
    }

    private void Says(string words, params string[] arguments)
    {
        Assert.Equal(0, desktop.Run(arguments));
        Assert.Contains(words, desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Misread_IsShownWithAMarkerUnderIt()
    {
        desktop.Run("name", "x 3 two 0 1 0");
        Assert.Contains("    x 3 two 0 1 0\n        ^^^\n", desktop.Error, StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
