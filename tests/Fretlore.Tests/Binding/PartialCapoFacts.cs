using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Binding;

/// <summary>A capo over some strings, from sheet to notes.</summary>
public sealed class PartialCapoFacts
{
    private const string Top = "title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\ncapo 2 on 5-3\n";

    [Fact]
    public void OpenStrings_SoundAtTheCapo_WhereItCovers() =>
        Assert.Equal([40, 47, 52, 57, 59, 64], Heights(Top + "section All\n  @1 W [0 0 0 0 0 0] |"));

    [Fact]
    public void Frets_AreCountedFromTheNut() =>
        Assert.Equal([45, 52, 54], Heights(Top + "section All\n  @1 Q 5@6 7@5 4@4 R |"));

    [Theory]
    [InlineData("2 on 5-3")]
    [InlineData("2 on 3-5")]
    [InlineData("2 on 543")]
    [InlineData("2 on 345")]
    public void TheStrings_MayBeTypedInAnyOrder(string capo) =>
        Assert.Equal("2 on 5-3", Sheets.Song(Top.Replace("2 on 5-3", capo, StringComparison.Ordinal) + "section All\n  @1 W 0 |").Parts[0].Neck.Capo.ToString());

    /// <summary>An octave above string 4 under a capo at fret 2 is touched at fret 14; a stopped fret 5 is touched 12 above.</summary>
    [Fact]
    public void Harmonics_AreTouchedWhereTheyLieOnTheNeck() =>
        Assert.Equal([64, 67, 64], Heights(Top + "section All\n  @4 Q 14* 5*17 0*14 R |"));

    [Fact]
    public void ATrillFromTheOpenString_GoesUpFromTheCapo() =>
        Assert.Equal(2, Sheets.Song(Top + "section All\n  @4 W 0~4 |") is var song ? song.Parts[0].Bars[0].Notes.Single().TrillSemitones(song.Parts[0].Neck) : null);

    [Fact]
    public void OpenToFret_IsHammered_AndBackPulled() => Assert.Equal(
        [Attack.Picked, Attack.HammerOn, Attack.PullOff],
        Sheets.Song(Top + "section All\n  @4 Q 0,3,0 R |").Parts[0].Bars[0].Notes.Select(note => note.Attack));

    [Fact]
    public void ItMovesInAPartsLine_AndFretsAreReadAnew() =>
        Assert.Equal([52, 52, 54], Heights("title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\nsection All\n  (capo 2 on 5-3) @4 W 0 | (capo off) @4 W 2 | (capo 2) @4 W 2 |"));

    [Fact]
    public void ARiffPlayedAsSounded_UnderIt_FindsThePitches()
    {
        var song = Sheets.Song("title A\ntempo Q = 90\ntuning E2 A2 D3 G3 B3 E4\nriff low\n  capo off\n  @4 Q 2 4 5 7 |\nsection All\n  low as sounded (capo 2 on 5-3) low as sounded");
        Assert.Equal([52, 54, 55, 57, 52, 54, 55, 57], song.Parts[0].Bars.SelectMany(bar => bar.Notes).Select(note => note.Sounding.Midi));
        Assert.Equal([2, 4, 5, 7, 0, 4, 5, 7], song.Parts[0].Bars.SelectMany(bar => bar.Notes).Select(note => note.Fret.Number));
    }

    /// <summary>The generated sheets that other checks send through files and back do have partial capos.</summary>
    [Fact]
    public void GeneratedSheets_HaveThem()
    {
        var partial = 0;
        SheetGen.Valid(300, 200, song =>
        {
            if (song.Parts.Any(part => part.Neck.Capo.IsPartial)) Interlocked.Increment(ref partial);
        });
        Assert.True(partial >= 10, $"Only {partial} had one.");
    }

    private static IEnumerable<int> Heights(string text) => Sheets.Song(text).Parts[0].Bars.SelectMany(bar => bar.Notes).Select(note => note.Sounding.Midi);
}
