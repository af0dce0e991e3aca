using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>One note on one string.</summary>
public sealed record Note
{
    public NoteId Id { get; init; }

    public required StringNumber String { get; init; }

    /// <summary>Counted from the capo. For a natural harmonic the fret touched; for a dead note at no fret, 0.</summary>
    public required Fret Fret { get; init; }

    /// <summary>The pitch at the onset without bend: string, capo and fret, or the harmonic that sounds (nearest semitone).</summary>
    /// <remarks>A dead note keeps the pitch its place would have; <see cref="IsDead"/> says it is not heard as such.</remarks>
    public required Height Sounding { get; init; }

    public Attack Attack { get; init; }

    public GlideIn GlideIn { get; init; }

    public GlideOut GlideOut { get; init; }

    public Bend? Bend { get; init; }

    public Vibrato Vibrato { get; init; }

    public Harmonic? Harmonic { get; init; }

    public bool IsDead { get; init; }

    public bool IsGhost { get; init; }

    public bool IsAccented { get; init; }

    public bool IsStaccato { get; init; }

    public bool IsPalmMuted { get; init; }

    public bool LetsRing { get; init; }

    /// <summary>The value of each tremolo stroke, or null.</summary>
    public ValueBase? Tremolo { get; init; }

    /// <summary>The other fret of a trill on this string, or null.</summary>
    public Fret? Trill { get; init; }

    /// <summary>The other fret of its trill when it is moved to another fret, as far from that; null without a trill, or where that would be below the open string.</summary>
    public Fret? TrillFrom(Fret fret) => Trill is { } other && other.Number - Fret.Number + fret.Number is >= 0 and var moved ? new Fret(moved) : null;

    /// <summary>How far the tremolo arm dips the pitch right after the onset, in cents below it; 0 for no dip.</summary>
    public int DipCents { get; init; }

    /// <summary>The fretting finger when the sheet says it.</summary>
    public Finger? Finger { get; init; }

    /// <summary>True when the next event of the strand that has this string holds this note.</summary>
    public bool IsHeldOn { get; init; }

    public bool IsTiedFromBefore => Attack == Attack.Held;
}
