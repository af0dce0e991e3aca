using CsCheck;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Binding;

/// <summary>Notes and events keep rare marks apart; nobody outside may notice.</summary>
public class RareMarksFacts
{
    private static readonly Note Plain = new() { String = new(3), Fret = new(7), Sounding = new(62) };

    private static readonly Event Quarter = new() { Start = Beats.Zero, Value = new(ValueBase.Quarter), Notes = [Plain] };

    private static readonly (string Name, Func<Note, Note> Set, Func<Note, Note> TakeAway)[] Marks =
    [
        ("bend", n => n with { Bend = new Bend(0, [200]) }, n => n with { Bend = null }),
        ("vibrato", n => n with { Vibrato = new Vibrato(VibratoWidth.Wide, 2) }, n => n with { Vibrato = default }),
        ("harmonic", n => n with { Harmonic = new Harmonic(HarmonicKind.Natural, new(7)) }, n => n with { Harmonic = null }),
        ("tremolo", n => n with { Tremolo = ValueBase.Eighth }, n => n with { Tremolo = null }),
        ("trill", n => n with { Trill = new Fret(9) }, n => n with { Trill = null }),
        ("dip", n => n with { DipCents = 150 }, n => n with { DipCents = 0 }),
        ("finger", n => n with { Finger = Finger.Thumb }, n => n with { Finger = null }),
        ("dead", n => n with { IsDead = true }, n => n with { IsDead = false }),
        ("ghost", n => n with { IsGhost = true }, n => n with { IsGhost = false }),
        ("accent", n => n with { IsAccented = true }, n => n with { IsAccented = false }),
        ("staccato", n => n with { IsStaccato = true }, n => n with { IsStaccato = false }),
        ("palm mute", n => n with { IsPalmMuted = true }, n => n with { IsPalmMuted = false }),
        ("let ring", n => n with { LetsRing = true }, n => n with { LetsRing = false }),
        ("held on", n => n with { IsHeldOn = true }, n => n with { IsHeldOn = false }),
    ];

    private static readonly (string Name, Func<Event, Event> Set, Func<Event, Event> TakeAway)[] Signs =
    [
        ("graces", e => e with { Graces = [Plain] }, e => e with { Graces = [] }),
        ("picking finger", e => e with { PickingFinger = 'p' }, e => e with { PickingFinger = null }),
        ("dynamic", e => e with { Dynamic = Dynamic.Pianissimo }, e => e with { Dynamic = null }),
        ("words", e => e with { Words = "slower" }, e => e with { Words = null }),
        ("shape", e => e with { Shape = "ring" }, e => e with { Shape = null }),
        ("chord symbol", e => e with { ChordSymbol = "Em9" }, e => e with { ChordSymbol = null }),
    ];

    [Fact]
    public void MarksTakenAwayAgainLeaveTheNoteAsItWas() => Gen.Shuffle(Marks, 1, Marks.Length).Sample(some =>
    {
        var marked = some.Aggregate(Plain, (n, m) => m.Set(n));
        Assert.NotEqual(Plain, marked);
        Assert.Equal(marked, some.Reverse().Aggregate(Plain, (n, m) => m.Set(n)));
        Assert.Equal(Plain, some.Aggregate(marked, (n, m) => m.TakeAway(n)));
    }, iter: 300);

    [Fact]
    public void SignsTakenAwayAgainLeaveTheEventAsItWas() => Gen.Shuffle(Signs, 1, Signs.Length).Sample(some =>
    {
        var signed = some.Aggregate(Quarter, (e, s) => s.Set(e));
        Assert.NotEqual(Quarter, signed);
        Assert.Equal(signed, some.Reverse().Aggregate(Quarter, (e, s) => s.Set(e)));
        Assert.Equal(Quarter, some.Aggregate(signed, (e, s) => s.TakeAway(e)));
    }, iter: 300);

    [Fact]
    public void EachMarkIsKeptBesideAllOthers()
    {
        var all = Marks.Aggregate(Plain, (n, m) => m.Set(n));
        Assert.Equal(new Bend(0, [200]), all.Bend);
        Assert.Equal(new Vibrato(VibratoWidth.Wide, 2), all.Vibrato);
        Assert.Equal(new Harmonic(HarmonicKind.Natural, new(7)), all.Harmonic);
        Assert.Equal((ValueBase.Eighth, new Fret(9), 150, Finger.Thumb), (all.Tremolo!.Value, all.Trill!.Value, all.DipCents, all.Finger!.Value));
        Assert.True(all is { IsDead: true, IsGhost: true, IsAccented: true, IsStaccato: true, IsPalmMuted: true, LetsRing: true, IsHeldOn: true });
        Assert.Equal((3, 7, 62), (all.String.Value, all.Fret.Number, all.Sounding.Midi));
    }
}
