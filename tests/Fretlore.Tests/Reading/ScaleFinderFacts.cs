using Fretlore.Music;
using Fretlore.Music.Scales;
using Fretlore.Reading.Scales;

namespace Fretlore.Tests.Reading;

public class ScaleFinderFacts
{
    [Theory]
    [InlineData("A C D E G", "A", "A Minor pentatonic")]
    [InlineData("A C D E G", null, "A Minor pentatonic")]
    [InlineData("C A G E D", "C", "C Major pentatonic")]
    [InlineData("A B C D E F# G", "A", "A Dorian")]
    [InlineData("E F G# A B C D", "E", "E Phrygian dominant")]
    [InlineData("A C D Eb E G", "A", "A Blues")]
    [InlineData("D E F# G# A B C", "D", "D Lydian dominant")]
    [InlineData("C Db Eb E F# G A Bb", "C", "C Diminished half-whole")]
    public void Find_GivesThePlayersName_First(string notes, string? root, string expected)
    {
        var best = ScaleFinder.Find(Names(notes), root is null ? null : Names(root)[0])[0];
        Assert.Equal(expected, best.Root + " " + best.Name);
        Assert.Empty(best.Outside);
        Assert.Empty(best.Missing);
    }

    [Fact]
    public void EveryScale_PlayedWhole_IsFirst_ForItsRoot()
    {
        var root = Names("D")[0];
        foreach (var scale in ScaleTable.All)
        {
            var best = ScaleFinder.Find(scale.NotesFrom(root).AsSpan(), root)[0];
            Assert.True(ScaleTable.TryFind(best.Name, out var found));
            // Burrows' Hirajoshi and Iwato, and a few other pairs, are the same notes under two names.
            Assert.Equal(scale.Tones, found.Tones);
        }
    }

    [Fact]
    public void MissingAndOutside_AreSaid()
    {
        var minor = ScaleFinder.Find(Names("A B C D E G"), Names("A")[0], 60);
        var aeolian = minor.Single(s => s.Name == "Aeolian");
        Assert.Equal("F", string.Join(' ', aeolian.Missing));
        var pentatonic = minor.Single(s => s.Name == "Minor pentatonic");
        Assert.Equal("B", string.Join(' ', pentatonic.Outside));
        Assert.Contains("B is outside A Minor pentatonic", pentatonic.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void ARootThatIsNotPlayed_IsSaidToBeSilent() => Assert.Contains(
        "the root itself does not sound", ScaleFinder.Find(Names("C D E G"), Names("A")[0])[0].Reason, StringComparison.Ordinal);

    [Theory]
    [InlineData("A C D E G A C E G A D C A F# G A", "A Minor pentatonic with the sixth of Dorian")]
    [InlineData("A C D D# E G A C D D# E G A C E A F# G A", "A Blues with the sixth of Dorian")]
    public void ATouchOfAMode_OnAPentatonic_IsToldAsSuch(string notes, string expected)
    {
        var best = ScaleFinder.Find(Names(notes))[0];
        Assert.Equal(expected, best.Root + " " + best.Name);
        Assert.Empty(best.Outside);
    }

    [Fact]
    public void AModesNote_AsWeightyAsTheOthers_MakesItTheMode() =>
        Assert.Equal("Dorian", ScaleFinder.Find(Names("A B C D E F# G F# E F# A F# D F# A"), Names("A")[0])[0].Name);

    [Fact]
    public void NoNotes_HaveNoScale() => Assert.Empty(ScaleFinder.Find([]));

    private static NoteName[] Names(string text) =>
        [.. text.Split(' ').Select(n => NoteName.TryParse(n, out var name) ? name : throw new ArgumentException(n))];
}
