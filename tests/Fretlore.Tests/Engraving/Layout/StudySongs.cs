using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;
using static Fretlore.Tests.Engraving.Layout.Studies;
using static Fretlore.Tests.Songs.SongBuilder;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>The songs that page tests engrave.</summary>
internal static class StudySongs
{
    private static readonly NoteName A = new(Step.A);

    /// <summary>One guitar with most single-voice signs: beams, tuplets, bends, legato, glides, graces, harmonics, repeats and endings.</summary>
    public static Song EverySign()
    {
        var b = new SongBuilder { Key = new Key(new NoteName(Step.E), Mode.Aeolian, true), Tempo = new Tempo(new NoteValue(ValueBase.Quarter), 104) }.Part("Lead guitar");
        b.Bar(Muted(E(6, 0)), Muted(S(6, 0)), Muted(S(6, 0)), Muted(E(6, 0)), Play(ValueBase.Eighth, (6, 7), (5, 9), (4, 9)), Muted(S(6, 0)), Muted(S(6, 0)), E(6, 3), Q(6, 5));
        b.Bar(Note(Q(2, 15), n => n with { Bend = new Bend(0, [200]), Vibrato = new Vibrato(VibratoWidth.Normal, 1) }),
            Note(Q(2, 15), n => n with { Bend = new Bend(0, [200, 0]) }), By(E(2, 12), Attack.PullOff), E(3, 14), Note(Q(3, 14), n => n with { Vibrato = new(VibratoWidth.Wide) }));
        b.Bar(Triplet(E(1, 12)), Triplet(By(E(1, 15), Attack.HammerOn)), Triplet(By(E(1, 12), Attack.PullOff)), Triplet(E(2, 15)), Triplet(By(E(2, 12), Attack.PullOff)), Triplet(E(3, 14)),
            Triplet(Q(3, 12)), Triplet(E(3, 11)), Q(4, 14));
        b.Bar(E(3, 5), By(E(3, 7), Attack.Glide), By(Q(3, 9), Attack.PickedGlide), Note(E(2, 8), n => n with { GlideOut = GlideOut.Downwards }), Note(E(2, 10), n => n with { GlideIn = GlideIn.FromBelow }), Grace(Q(2, 10), 2, 8));
        b.Bar(Play(ValueBase.Half, (4, 7), (3, 7), (2, 8)), Note(H(3, 12), n => n with { Harmonic = new Harmonic(HarmonicKind.Natural, new Fret(12)), LetsRing = true, Sounding = n.Sounding }));
        b.Bar(Note(E(5, 0), n => n with { IsDead = true }), Note(E(5, 0), n => n with { IsDead = true }), Dotted(E(5, 7)), S(5, 8), Rest(ValueBase.Quarter), Note(E(4, 5), n => n with { IsGhost = true }), Note(E(4, 7), n => n with { IsAccented = true }));
        b.Bar(Note(Q(2, 13), n => n with { Bend = new Bend(200, [0]) }), Note(E(2, 10), n => n with { Bend = new Bend(0, [50]) }), E(2, 12), Note(H(2, 15), n => n with { IsHeldOn = true, Bend = new Bend(0, [300]) }));
        b.Bar(By(Note(Q(2, 15), n => n with { Bend = new Bend(300, [0]) }), Attack.Held), Rest(ValueBase.Eighth), E(1, 11), S(1, 12), S(1, 11), S(1, 9), S(1, 8), Rest(ValueBase.Quarter));
        b.Bar(Note(Q(3, 9), n => n with { Tremolo = ValueBase.ThirtySecond }), By(E(1, 17), Attack.Tap), By(E(1, 12), Attack.PullOff), By(E(1, 15), Attack.HammerOn), E(1, 12), Change(Q(6, 0), e => e with { Stroke = Stroke.Down }));
        b.Bar(Change(Play(ValueBase.Half, (6, 3), (5, 2), (4, 0), (3, 0), (2, 0), (1, 3)), e => e with { Roll = Roll.LowToHigh }), Change(Q(1, 8), e => e with { Words = "freely", Dynamic = Dynamic.MezzoForte }), Note(E(1, 7), n => n with { IsStaccato = true }), E(1, 5));
        b.Bar(Play(ValueBase.Whole, (6, 0), (5, 2), (4, 2), (3, 0)));
        return (b.Build("Every sign once") with
        {
            Info = new SongInfo("Every Sign Once", "The Test Bench", "Written for these pages", "Free to copy"),
            Sections = [new Section("Intro", 0, 4), new Section("Verse", 4, 4), new Section("Ending", 8, 3)],
        })
        .WithBar(0, x => x with { StartsRepeat = true })
        .WithBar(2, x => x with { EndingPasses = [1, 2], StartsEnding = true, EndsEnding = true, RepeatCount = 3 })
        .WithBar(3, x => x with { EndingPasses = [3], StartsEnding = true, EndsEnding = true, EndLine = BarLine.Double })
        .WithBar(10, x => x with { EndLine = BarLine.Final })
        .Renumbered();
    }

    /// <summary>One guitar with segno, coda and a jump, fermatas, trills, rakes and rolls, dips of the arm, fingers, hairpins.</summary>
    public static Song JumpsAndOrnaments()
    {
        var b = new SongBuilder { Key = new Key(A, Mode.Aeolian, true) }.Part("Guitar");
        b.Bar(Note(Q(2, 5), n => n with { Trill = new Fret(7) }), E(2, 8), E(2, 10),
            Change(Play(ValueBase.Eighth, (5, 0), (4, 0), (3, 0), (2, 10)), e => e with { Roll = Roll.Rake, Notes = e.Notes.Select(n => n.Fret.IsOpen ? n with { IsDead = true } : n).ToValueList() }),
            Note(E(2, 12), n => n with { DipCents = 200 }), Note(Q(2, 13), n => n with { DipCents = 100, Finger = Finger.Ring }));
        b.Bar(Note(H(3, 5), n => n with { Trill = new Fret(8) }), Q(3, 7), Change(Q(3, 5), e => e with { HasFermata = true }));
        b.Bar(Change(Q(1, 5), e => e with { Spans = Spans.Crescendo, Dynamic = Dynamic.Piano }), Change(Q(1, 7), e => e with { Spans = Spans.Crescendo }),
            Change(Q(1, 8), e => e with { Dynamic = Dynamic.Forte, Spans = Spans.Diminuendo }), Change(Q(1, 5), e => e with { Spans = Spans.Diminuendo }));
        b.Bar(Change(Play(ValueBase.Half, (3, 5), (2, 5), (1, 5)), e => e with { Roll = Roll.HighToLow }), Change(Rest(ValueBase.Half), e => e with { HasFermata = true }));
        b.Bar(Note(Q(5, 7), n => n with { Trill = new Fret(8) }), Note(Q(5, 5), n => n with { Trill = new Fret(4), IsGhost = true }), Change(H(5, 0), e => e with { HasFermata = true }));
        return b.Build("Jumps and ornaments")
            .WithBar(0, x => x with { IsSegno = true })
            .WithBar(2, x => x with { Jump = Jump.ToCoda })
            .WithBar(3, x => x with { Jump = Jump.DalSegnoAlCoda, EndLine = BarLine.Double })
            .WithBar(4, x => x with { IsCoda = true, EndLine = BarLine.Final })
            .Renumbered();
    }

    /// <summary>A chord of every quality that has a sign of its own, half a bar each: major seventh, minor, diminished, half-diminished, augmented.</summary>
    public static Song Qualities()
    {
        var b = new SongBuilder { Key = new Key(new NoteName(Step.C), Mode.Ionian, true) }.Part("Guitar");
        b.Bar(Play(ValueBase.Half, (5, 3), (4, 2), (3, 0), (2, 0)), Play(ValueBase.Half, (5, 3), (4, 5), (3, 3), (2, 4)));
        b.Bar(Play(ValueBase.Half, (5, 3), (4, 4), (3, 3), (2, 4)), Play(ValueBase.Half, (5, 3), (4, 4), (3, 2), (2, 4)));
        b.Bar(Play(ValueBase.Half, (5, 3), (4, 2), (3, 1), (2, 1)), Play(ValueBase.Half, (5, 3), (4, 5), (3, 4), (2, 4)));
        b.Bar(Play(ValueBase.Half, (6, 2), (4, 0), (3, 2), (2, 3)), Play(ValueBase.Half, (5, 2), (4, 3), (3, 2), (2, 3)));
        return b.Build("Qualities").Renumbered();
    }

    /// <summary>Two guitars in a low tuning: a gallop with droning open string, and a lead that rests at first.</summary>
    /// <param name="bars">How many bars; a multiple of 4.</param>
    public static Song TwoGuitars(int bars)
    {
        var b = new SongBuilder { Key = new Key(A, Mode.Aeolian, true), Tempo = new Tempo(new NoteValue(ValueBase.Quarter), 132) }
            .Part("Rhythm guitar", "A1 E2 A2 D3 G3 B3 E4");
        for (var i = 0; i < bars; i++)
        {
            if (i % 4 == 3) b.Bar(Play(ValueBase.Quarter, (7, 8), (6, 8), (5, 8)), Muted(E(7, 0)), Muted(E(7, 0)), Play(ValueBase.Half, (7, 10), (6, 10), (5, 10)));
            else b.Bar(Muted(E(7, 0)), Muted(S(7, 0)), Muted(S(7, 0)), Muted(E(7, 0)), Muted(S(7, 0)), Muted(S(7, 0)), Play(ValueBase.Eighth, (7, 7), (6, 7), (5, 7)), Muted(S(7, 0)), Muted(S(7, 0)), Play(ValueBase.Eighth, (7, 5 + i % 3), (6, 5 + i % 3), (5, 5 + i % 3)), E(7, 3));
        }
        b.Part("Lead guitar", "A1 E2 A2 D3 G3 B3 E4");
        for (var i = 0; i < bars; i++)
        {
            if (i < 4) b.Bar();
            else if (i % 2 == 0) b.Bar(E(2, 10), By(E(2, 12), Attack.HammerOn), Q(1, 8 + i % 5), S(1, 12), S(1, 10), S(1, 8), S(2, 10), Note(Q(3, 9), n => n with { Bend = new Bend(0, [200]) }));
            else b.Bar(Triplet(E(3, 9)), Triplet(E(2, 8)), Triplet(E(2, 10)), Q(1, 8), Note(H(1, 12), n => n with { Vibrato = new(VibratoWidth.Normal) }));
        }
        return (b.Build("Two guitars") with
        {
            Info = new SongInfo("Slate and Iron", "Harbour Nine"),
            Sections = [.. Enumerable.Range(0, bars / 8).Select(i => new Section(i % 2 == 0 ? "Verse" : "Chorus", i * 8, 8))],
        }).WithBar(bars - 1, x => x with { EndLine = BarLine.Final }).Renumbered();
    }

    /// <summary>Fingerstyle in 6/8 with a bass strand under the melody, let ring throughout.</summary>
    public static Song TwoVoices()
    {
        var b = new SongBuilder { Meter = new Meter(6, 8), Key = new Key(new NoteName(Step.D), Mode.Mixolydian), Tempo = new Tempo(new NoteValue(ValueBase.Quarter, 1), 58) }
            .Part("Guitar", "D2 A2 D3 G3 A3 D4", 2);
        for (var i = 0; i < 8; i++) b.Bar(E(3, 2), E(2, 3), E(1, 0 + i), E(2, 3), E(3, 2), E(1, 5));
        var song = b.Build("Two voices") with { Info = new SongInfo("Lantern Water", "Ada Fenn") };
        for (var i = 0; i < 8; i++)
        {
            song = song.WithPartBar(0, i, bar => bar with { Strands = [bar.Strands[0], StrandOf(StrandKind.Bass, bar.Neck, Dotted(Q(6, i % 3)), Dotted(Q(5, 0)))] });
        }
        return song.WithBar(7, x => x with { EndLine = BarLine.Final }).Renumbered();
    }

    /// <summary>A bass and a nine-string: rests of several bars, bars written as again, key and metre changes, a free stretch, a hairpin.</summary>
    public static Song BarSigns()
    {
        var b = new SongBuilder { Key = new Key(new NoteName(Step.B, -1), Mode.Ionian, true) }.Part("Bass", "E1 A1 D2 G2");
        for (var i = 0; i < 16; i++)
        {
            if (i is >= 2 and < 6) b.Bar();
            else b.Bar(Q(4, 3), E(4, 3), E(3, 5), Q(2, 3), E(3, 0), E(4, 5 + i % 2));
        }
        b.Part("Nine-string guitar", "C#1 F#1 B1 E2 A2 D3 G3 B3 E4");
        for (var i = 0; i < 16; i++)
        {
            if (i is >= 2 and < 6) b.Bar();
            else b.Bar(Change(Play(ValueBase.Quarter, (9, 0), (8, 7)), e => e with { Spans = Spans.Crescendo }), Change(Q(9, 3), e => e with { Spans = Spans.Crescendo }), H(1, 12 + i % 3));
        }
        var song = b.Build("Bar signs") with { Info = new SongInfo("Bar Signs", "The Test Bench") };
        foreach (var i in new[] { 7, 8 }) song = song.WithPartBar(0, i, bar => bar with { Repeats = 1 });
        foreach (var i in new[] { 10, 11 }) song = song.WithPartBar(0, i, bar => bar with { Repeats = 2 });
        foreach (var i in new[] { 12, 13 }) song = song.WithPartBar(1, i, bar => bar with { Strands = [], RoadMap = "climb" });
        for (var i = 9; i < 16; i++) song = song.WithBar(i, bar => bar with { Key = new Key(A, Mode.Ionian, true) });
        for (var i = 14; i < 16; i++) song = song.WithBar(i, bar => bar with { Key = new Key(new NoteName(Step.C), Mode.Ionian, true) });
        return song.WithBar(9, bar => bar with { FeelChange = new Feel(ValueBase.Eighth), Tempos = [new TempoMark(Beats.Zero, new Tempo(new NoteValue(ValueBase.Half), 66))] })
            .WithBar(15, bar => bar with { EndLine = BarLine.Final }).Renumbered();
    }
}
