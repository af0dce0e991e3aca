using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;
using static Fretlore.Tests.Songs.SongBuilder;

namespace Fretlore.Tests.Exchange;

/// <summary>Small invented songs that the tests of MusicXML, MIDI and the performance share.</summary>
internal static class StudySongs
{
    /// <summary>Two parts with chords, rests, triplets, a tie, a bass strand, dots, a repeat and a capo; nothing that bends or spreads.</summary>
    public static Song Plain()
    {
        var song = new SongBuilder { Key = KeyOf("G", "major"), Tempo = new Tempo(new NoteValue(ValueBase.Quarter), 96) }
            .Part("lead", capo: 2)
            .Bar(Play(ValueBase.Quarter, (6, 3), (5, 2), (4, 0)), Rest(ValueBase.Eighth), Play(ValueBase.Eighth, (3, 0)), Play(ValueBase.Half, (1, 3)))
            .Bar(Triplet(2, 0), Triplet(2, 1), Triplet(2, 3), Play(ValueBase.Quarter, (2, 5)), Held(With(Play(ValueBase.Half, (1, 7)), n => n with { IsHeldOn = true }), false))
            .Bar(Held(Play(ValueBase.Half, (1, 7)), true), Dotted(ValueBase.Quarter, (3, 4)), Play(ValueBase.Eighth, (4, 4)))
            .Part("low", "E1 A1 D2 G2")
            .Bar(Play(ValueBase.Whole, (4, 3)))
            .Bar()
            .Strands(
                (StrandKind.Main, Beats.Zero, [Play(ValueBase.Half, (1, 5)), Play(ValueBase.Half, (1, 7))]),
                (StrandKind.Bass, Beats.Quarter, [Play(ValueBase.Quarter, (4, 5)), Play(ValueBase.Quarter, (4, 3))]))
            .Build("Plain study");
        return song with { Bars = song.Bars.Select((b, i) => i == 2 ? b with { RepeatCount = 2, EndLine = BarLine.Final } : b).ToValueList() };
    }

    /// <summary>The tablature part of the W3C tutorial: string 3, fret 5 hammered to 7, then 8, 7 and 5 by pull-offs.</summary>
    public static Song Legato() => new SongBuilder { Key = KeyOf("C", "major") }
        .Part("guitar")
        .Bar(
            Play(ValueBase.Quarter, (3, 5)),
            With(Play(ValueBase.Quarter, (3, 7)), n => n with { Attack = Attack.HammerOn }),
            Play(ValueBase.Eighth, (3, 8)),
            With(Play(ValueBase.Eighth, (3, 7)), n => n with { Attack = Attack.PullOff }),
            With(Play(ValueBase.Quarter, (3, 5)), n => n with { Attack = Attack.PullOff }))
        .Build("Legato study");

    /// <summary>One note of a value on string 2, changed.</summary>
    public static Song One(ValueBase value, Func<Note, Note> change, int fret = 7) => new SongBuilder()
        .Part("guitar")
        .Bar(With(Play(value, (2, fret)), change))
        .Build();

    public static Key KeyOf(string tonic, string mode) => Key.TryParse(tonic, mode, out var key) ? key : throw new ArgumentException(mode);

    private static Func<Neck, Event> Triplet(int number, int fret) =>
        neck => Play(ValueBase.Eighth, (number, fret))(neck) with { Tuplet = new Tuplet(3, 2, ValueBase.Eighth) };

    private static Func<Neck, Event> Dotted(ValueBase value, params (int String, int Fret)[] places) =>
        neck => Play(value, places)(neck) with { Value = new NoteValue(value, 1) };

    private static Func<Neck, Event> Held(Func<Neck, Event> play, bool held) =>
        With(play, n => held ? n with { Attack = Attack.Held } : n);
}
