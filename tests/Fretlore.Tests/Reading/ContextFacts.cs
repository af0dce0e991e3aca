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

    [Fact]
    public void AThumbThatGoesFromRootToFifth_SaysTheRoot()
    {
        // B2 and F#3 below a held G#4: no G#m7 without its fifth, but B with its sixth above.
        SongBuilder Over(int second, int fret) => new SongBuilder { Meter = new Meter(6, 8) }.Part("guitar").Strands(
            (StrandKind.Main, Beats.Zero, [n => Play(ValueBase.Half, (1, 4))(n) with { Value = new NoteValue(ValueBase.Half, 1) }]),
            (StrandKind.Bass, Beats.Zero, [Dotted(5, 2), Dotted(second, fret)]));
        Assert.Equal("B5add13", Symbols(Over(4, 4)));
        Assert.EndsWith("The bass goes from its root to its fifth.", SongReader.Read(Over(4, 4).Build()).Parts[0].Chords[0].Best.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void AThirdThatAnotherPartHolds_BelongsToTheChord()
    {
        // A D G: D7 without its third and fifth, until another part holds F#.
        var shell = Play(ValueBase.Whole, (5, 5), (4, 7), (3, 5)); // D A C
        Assert.Equal("D7(no3)", Symbols(new SongBuilder().Part("guitar").Bar(shell)));
        var with = new SongBuilder().Part("guitar").Bar(shell).Part("lead").Bar(Play(ValueBase.Whole, (1, 2)));
        Assert.Equal("D7", Symbols(with));
        Assert.EndsWith("Another part sounds its major third.", SongReader.Read(with.Build()).Parts[0].Chords[0].Best.Reason, StringComparison.Ordinal);
        var passing = new SongBuilder().Part("guitar").Bar(shell)
            .Part("lead").Bar(Play(ValueBase.Quarter, (1, 2)), Play(ValueBase.Half, (1, 3)), Play(ValueBase.Quarter, (1, 0)));
        Assert.Equal("D7(no3)", Symbols(passing));
    }

    [Fact]
    public void AChordThatRingsOnOverTheBarLine_HasTheLineAboveIt()
    {
        SongReading Over(bool rings)
        {
            var chord = With(Play(ValueBase.Whole, (5, 3), (4, 2), (3, 0)), n => n with { LetsRing = rings }); // C E G
            return SongReader.Read(new SongBuilder { Key = new Key(new NoteName(Step.C), Mode.Ionian, true) }.Part("guitar")
                .Bar(chord).Bar(Play(ValueBase.Half, (2, 3)), Play(ValueBase.Half, (2, 5))).Build());
        }
        Assert.Equal("ninth, a tension; major third", string.Join("; ", Over(rings: true).Roles.TakeLast(2).Select(r => r.Words)));
        Assert.Equal("second of the key; major third of the key", string.Join("; ", Over(rings: false).Roles.TakeLast(2).Select(r => r.Words)));
    }

    private static Func<Neck, Event> Dotted(int number, int fret) =>
        neck => Play(ValueBase.Quarter, (number, fret))(neck) with { Value = new NoteValue(ValueBase.Quarter, 1) };

    private static string Symbols(SongBuilder song) => string.Join(' ', SongReader.Read(song.Build()).Parts[0].Chords.Select(c => c.Symbol));
}
