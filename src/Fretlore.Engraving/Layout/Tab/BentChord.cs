using Fretlore.Engraving.Layout.Model;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>The notes of a chord that are bent, as far as the drawing of one depends on the others.</summary>
/// <param name="Slot">The chord.</param>
/// <param name="HalfWidth">Half the widest number of the chord: curves start at one place, clear of the numbers above.</param>
/// <param name="Heights">All heights their bends reach, ties included, in cents above the fretted pitch, lowest first: each has a level of its own.</param>
/// <param name="IsAside">Whether the line of a pre-bend goes up beside its number, because others stand above it.</param>
internal sealed record BentChord(Slot Slot, double HalfWidth, int[] Heights, bool IsAside)
{
    /// <summary>How much further right the arrow of a bend stands than that of a different one on a higher string.</summary>
    public const double Step = 1.7;

    /// <summary>How far right of their usual place the arrows of a note's bend stand, so that lines of different bends don't cross.</summary>
    public double ShiftOf(Note note) => Step * RankOf(Slot, note);

    /// <summary>How many times the bend changes from the highest string of a chord down to a note's.</summary>
    public static int RankOf(Slot slot, Note note)
    {
        if (slot.Heads.Length == 1) return 0;
        var rank = 0;
        Bend? last = null;
        foreach (var other in slot.Heads.Select(h => h.Note).Where(n => n.Bend is not null && n.String.Value <= note.String.Value).OrderBy(n => n.String.Value))
        {
            if (last is not null && other.Bend != last) rank++;
            last = other.Bend;
        }
        return rank;
    }
}
