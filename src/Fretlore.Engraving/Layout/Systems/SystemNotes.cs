using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>A note drawn in a system.</summary>
/// <param name="Placed">The note.</param>
/// <param name="X">Left edge of its head.</param>
internal readonly record struct SystemNote(PlacedNote Placed, double X);

/// <summary>Walks the notes of one staff through a system in order.</summary>
internal static class SystemNotes
{
    public static List<SystemNote> Of(SystemGeometry geometry, StaffPlan staff, Links links)
    {
        var notes = new List<SystemNote>(CountIn(geometry, staff));
        foreach (var place in geometry.Measures)
        {
            foreach (var voice in place.Measure.Parts[staff.Index].Voices)
            {
                foreach (var slot in voice.Slots)
                {
                    var x = geometry.X(slot);
                    for (var g = 0; g < slot.Graces.Length; g++)
                    {
                        notes.Add(new SystemNote(links[slot.Graces[g].Note], GraceDrawer.XOf(slot, g, x)));
                    }
                    for (var h = 0; h < slot.Heads.Length; h++)
                    {
                        notes.Add(new SystemNote(links[slot.Heads[h].Note], x + slot.Shape.HeadX[h]));
                    }
                }
            }
        }
        return notes;
    }

    private static int CountIn(SystemGeometry geometry, StaffPlan staff)
    {
        var count = 0;
        foreach (var place in geometry.Measures)
        {
            foreach (var voice in place.Measure.Parts[staff.Index].Voices)
            {
                foreach (var slot in voice.Slots) count += slot.Graces.Length + slot.Heads.Length;
            }
        }
        return count;
    }

    /// <summary>The left edge of a note of this system.</summary>
    public static double XOf(SystemGeometry geometry, PlacedNote note) => note.IsGrace
        ? GraceDrawer.XOf(note.Slot, note.Head, geometry.X(note.Slot))
        : geometry.X(note.Slot) + note.Slot.Shape.HeadX[note.Head];

    /// <summary>Whether a note is reached by a slurred move: hammered, pulled off or glided to without the pick.</summary>
    public static bool IsSlurred(Note note) => note.Attack is Attack.HammerOn or Attack.PullOff or Attack.Glide;

    public static bool IsGlide(Note note) => note.Attack is Attack.Glide or Attack.PickedGlide;
}
