using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>One note on one string.</summary>
/// <remarks>A song holds thousands: what few of them have lies apart in <see cref="RareMarks"/>, and marks that are there or not share a byte.</remarks>
public sealed record Note
{
    private readonly RareMarks? rare;
    private readonly short fret;
    private readonly short sounding;
    private readonly Marks marks;
    private readonly VibratoWidth vibrato;
    private readonly byte finger; // one more than the finger, 0 for none

    [Flags]
    private enum Marks : byte
    {
        Dead = 1,
        Ghost = 2,
        Accented = 4,
        Staccato = 8,
        PalmMuted = 16,
        Ringing = 32,
        HeldOn = 64,
    }

    public NoteId Id { get; init; }

    public required StringNumber String { get; init; }

    /// <summary>As written under the capo. For a natural harmonic the fret touched; for a dead note at no fret, 0.</summary>
    public required Fret Fret
    {
        get => new(fret);
        init => fret = Short(value.Number);
    }

    /// <summary>The pitch at the onset without bend: string, capo and fret, or the harmonic that sounds (nearest semitone).</summary>
    /// <remarks>A dead note keeps the pitch its place would have; <see cref="IsDead"/> says it is not heard as such.</remarks>
    public required Height Sounding
    {
        get => new(sounding);
        init => sounding = Short(value.Midi);
    }

    public Attack Attack { get; init; }

    public GlideIn GlideIn { get; init; }

    public GlideOut GlideOut { get; init; }

    public Bend? Bend
    {
        get => rare?.Bend;
        init => rare = rare is null && value is null ? null : (RareMarks.Of(rare) with { Bend = value }).OrNull();
    }

    public Vibrato Vibrato
    {
        get => new(vibrato, rare?.VibratoAfterMoves ?? 0);
        init
        {
            vibrato = value.Width;
            rare = rare is null && value.AfterMoves == 0 ? null : (RareMarks.Of(rare) with { VibratoAfterMoves = value.AfterMoves }).OrNull();
        }
    }

    public Harmonic? Harmonic
    {
        get => rare?.Harmonic;
        init => rare = rare is null && value is null ? null : (RareMarks.Of(rare) with { Harmonic = value }).OrNull();
    }

    public bool IsDead
    {
        get => Has(Marks.Dead);
        init => marks = With(Marks.Dead, value);
    }

    public bool IsGhost
    {
        get => Has(Marks.Ghost);
        init => marks = With(Marks.Ghost, value);
    }

    public bool IsAccented
    {
        get => Has(Marks.Accented);
        init => marks = With(Marks.Accented, value);
    }

    public bool IsStaccato
    {
        get => Has(Marks.Staccato);
        init => marks = With(Marks.Staccato, value);
    }

    public bool IsPalmMuted
    {
        get => Has(Marks.PalmMuted);
        init => marks = With(Marks.PalmMuted, value);
    }

    public bool LetsRing
    {
        get => Has(Marks.Ringing);
        init => marks = With(Marks.Ringing, value);
    }

    /// <summary>The value of each tremolo stroke, or null.</summary>
    public ValueBase? Tremolo
    {
        get => rare?.Tremolo;
        init => rare = rare is null && value is null ? null : (RareMarks.Of(rare) with { Tremolo = value }).OrNull();
    }

    /// <summary>The other fret of a trill on this string, or null.</summary>
    public Fret? Trill
    {
        get => rare?.Trill;
        init => rare = rare is null && value is null ? null : (RareMarks.Of(rare) with { Trill = value }).OrNull();
    }

    /// <summary>Semitones up to the other note of its trill on the neck it is played on, below 0 when that is lower; null without a trill.</summary>
    public int? TrillSemitones(Neck neck) => Trill is { } other ? neck.Semitones(String, Fret, other) : null;

    /// <summary>How far the tremolo arm dips the pitch right after the onset, in cents below it; 0 for no dip.</summary>
    public int DipCents
    {
        get => rare?.DipCents ?? 0;
        init => rare = rare is null && value == 0 ? null : (RareMarks.Of(rare) with { DipCents = value }).OrNull();
    }

    /// <summary>The fretting finger when the sheet says it.</summary>
    public Finger? Finger
    {
        get => finger == 0 ? null : (Finger)(finger - 1);
        init => finger = (byte)(value is { } said ? (byte)said + 1 : 0);
    }

    /// <summary>True when the next event of the strand that has this string holds this note.</summary>
    public bool IsHeldOn
    {
        get => Has(Marks.HeldOn);
        init => marks = With(Marks.HeldOn, value);
    }

    public bool IsTiedFromBefore => Attack == Attack.Held;

    private bool Has(Marks mark) => (marks & mark) != 0;

    private Marks With(Marks mark, bool isSet) => isSet ? marks | mark : marks & ~mark;

    // Beyond these lies no instrument.
    private static short Short(int value) => (short)Math.Clamp(value, short.MinValue, short.MaxValue);
}
