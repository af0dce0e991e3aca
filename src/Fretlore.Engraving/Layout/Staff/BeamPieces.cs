using Fretlore.Engraving.Layout.Model;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>One straight piece of a beam of a group.</summary>
/// <param name="Level">1 for the eighths' beam, 2 for the sixteenths'.</param>
/// <param name="First">Its first note within the group.</param>
/// <param name="Last">Its last; the same as the first for a short beam on one note.</param>
/// <param name="Forward">Whether a short beam points to the next note.</param>
internal readonly record struct BeamPiece(int Level, int First, int Last, bool Forward);

/// <summary>Divides the beams of a group into pieces: the first through the whole group, further ones over the notes that have them.</summary>
internal static class BeamPieces
{
    public static List<BeamPiece> Of(Bar bar, Voice voice, (int First, int Last) group)
    {
        var missing = bar.IsPickup ? bar.Meter.Length - bar.Length : Beats.Zero;
        var slots = voice.Slots.AsSpan(group.First, group.Last - group.First + 1);
        var levels = 0;
        foreach (var slot in slots) levels = Math.Max(levels, slot.Flags);
        var pieces = new List<BeamPiece>();
        for (var level = 1; level <= levels; level++)
        {
            for (var first = 0; first < slots.Length; first++)
            {
                if (slots[first].Flags < level) continue;
                var last = first;
                while (last + 1 < slots.Length && slots[last + 1].Flags >= level && !BeamGroups.Breaks(bar.Meter, level, slots[last + 1].Event.Start + missing)) last++;
                pieces.Add(new BeamPiece(level, first, last, first == last && PointsForward(slots, first, missing)));
                first = last;
            }
        }
        return pieces;
    }

    // A short beam points to the note it makes up a beat with: back after a dotted note, forward when it begins a division.
    private static bool PointsForward(ReadOnlySpan<Slot> slots, int at, Beats missing) =>
        at == 0 || (at < slots.Length - 1 && (slots[at].Event.Start + missing).Modulo(slots[at].Event.Duration * 2).IsZero);
}
