using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Tests.Songs;
using static Fretlore.Tests.Songs.SongBuilder;

namespace Fretlore.Tests.Reading;

/// <summary>Chords named by what is around them.</summary>
public class ContextFacts
{
    private static readonly Func<Neck, Event> SixthOfC = Play(ValueBase.Whole, (4, 10), (3, 9), (2, 8), (1, 5)); // C E G A

    [Fact]
    public void AChordOverABassPartsNote_IsNamedFromThatBass()
    {
        Assert.Equal("C6", Symbols(new SongBuilder().Part("guitar").Bar(SixthOfC)));
        var overA = new SongBuilder().Part("guitar").Bar(SixthOfC).Part("bass", "E1 A1 D2 G2").Bar(Play(ValueBase.Whole, (3, 0)));
        Assert.Equal("Am7", Symbols(overA));
        Assert.EndsWith("The bass part gives the bass.", SongReader.Read(overA.Build()).Parts[0].Chords[0].Best.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void ABassThatWalks_LeavesTheChordItsName()
    {
        var walk = new SongBuilder().Part("guitar").Bar(SixthOfC).Part("bass", "E1 A1 D2 G2")
            .Bar(Play(ValueBase.Quarter, (3, 3)), Play(ValueBase.Quarter, (2, 0)), Play(ValueBase.Quarter, (2, 2)), Play(ValueBase.Quarter, (3, 0)));
        Assert.Equal("C6", Symbols(walk));
    }

    [Fact]
    public void AGuitarWithASeventhString_IsNoBassPart()
    {
        var lower = new SongBuilder().Part("guitar").Bar(SixthOfC).Part("low", "B1 E2 A2 D3 G3 B3 E4").Bar(Play(ValueBase.Whole, (6, 5)));
        Assert.Equal("C6", Symbols(lower));
    }

    [Fact]
    public void InTwoVoices_ANoteThatPassesIsNotInTheName()
    {
        // Bass A held; above it G#4 A4 G#4 in eighths, then F#4: the G# only goes by.
        var song = new SongBuilder { Meter = new Meter(6, 8) }.Part("guitar").Strands(
            (StrandKind.Main, Beats.Zero, [Play(ValueBase.Eighth, (1, 4)), Play(ValueBase.Eighth, (1, 5)), Play(ValueBase.Eighth, (1, 4)), Dotted(1, 2)]),
            (StrandKind.Bass, Beats.Zero, [Dotted(5, 0), Dotted(5, 0)]));
        Assert.Equal("F#m/A", Symbols(song));
    }

    private static Func<Neck, Event> Dotted(int number, int fret) =>
        neck => Play(ValueBase.Quarter, (number, fret))(neck) with { Value = new NoteValue(ValueBase.Quarter, 1) };

    private static string Symbols(SongBuilder song) => string.Join(' ', SongReader.Read(song.Build()).Parts[0].Chords.Select(c => c.Symbol));
}
