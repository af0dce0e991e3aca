using Fretlore.Hands.Grips;
using Fretlore.Score;

namespace Fretlore.Hands.Plans;

/// <summary>How a press comes out of the one before it on its string.</summary>
internal enum Joining
{
    None,

    /// <summary>It is the same note, which must sound on.</summary>
    Held,

    /// <summary>It is the same note, which should ring on.</summary>
    Ringing,

    /// <summary>A hammer-on or pull-off.</summary>
    Legato,

    /// <summary>A glide along the string.</summary>
    Glide,
}

/// <summary>What a press has to do with the moment before.</summary>
/// <param name="Kind">None where it is new.</param>
/// <param name="From">Index of the press of the moment before it comes from; -1 for none.</param>
internal readonly record struct PressLink(Joining Kind, int From)
{
    public static PressLink None => new(Joining.None, -1);
}

/// <summary>A moment at which the fretting hand has something to hold.</summary>
/// <param name="Hold">What.</param>
/// <param name="Links">For each press what it comes from.</param>
/// <param name="Notes">For each press the note it first plays or goes on with.</param>
/// <param name="IsNew">For each press whether it begins here.</param>
/// <param name="Bar">Index into the part's written bars.</param>
/// <param name="Start">In seconds from the part's start, at the written tempo.</param>
/// <param name="TimeToMove">Seconds the hand has had since it could leave the moment before.</param>
/// <param name="SinceBefore">Seconds since the moment before began.</param>
internal sealed record Moment(Hold Hold, PressLink[] Links, NoteId[] Notes, bool[] IsNew, int Bar, double Start, double TimeToMove, double SinceBefore)
{
    // Seconds; times that differ by less come of adding in another order.
    private const double SameTime = 1e-9;

    /// <summary>True when the same grips hold it and moves to it cost the same, whatever note and bar it is.</summary>
    public bool IsSearchedAs(Moment other) =>
        Hold.Equals(other.Hold) && Links.AsSpan().SequenceEqual(other.Links) && (TimeToMove == other.TimeToMove || Math.Abs(TimeToMove - other.TimeToMove) < SameTime);
}
