using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws what the hands do above a staff that has no tablature to show it: letters, strokes, vibrato, picking fingers.</summary>
internal sealed class StaffPlaying(Pen pen, StaffPlan staff, SystemGeometry geometry, Links links)
{
    private const double PickingHalf = 0.65;

    private readonly HandLetters letters = new(pen);
    private readonly VibratoLines vibratos = new(pen);
    private readonly StackedRows letterRow = new(pen);
    private readonly StrokeSigns strokes = new(pen);
    private readonly AlignedRow picking = new(pen);

    public void Draw(List<SystemNote> notes)
    {
        foreach (var note in notes)
        {
            if (!note.Placed.IsGrace) letters.Add(note.Placed.Note, MiddleOf(note.Placed));
            AddMove(note.Placed);
        }
        foreach (var place in geometry.Measures)
        {
            foreach (var voice in place.Measure.Parts[staff.Index].Voices)
            {
                for (var i = 0; i < voice.Slots.Length; i++)
                {
                    var room = i + 1 < voice.Slots.Length ? geometry.X(voice.Slots[i + 1]) : place.Right - 0.3;
                    DrawSlot(voice.Slots[i], room);
                }
            }
        }
        picking.DrawAbove(0.4, 0.8);
        letters.Place(letterRow);
        letterRow.DrawAbove(0, 0.8);
        strokes.Draw(0.9);
        vibratos.Draw();
    }

    private void DrawSlot(Slot slot, double room)
    {
        var x = geometry.X(slot);
        // A vibrato at the top of a bend begins over the head of the pitch it reaches.
        var left = x + (slot.Reached.IsEmpty ? 0.2 : slot.Shape.Right + ReachedHeads.Width(slot) - 0.9);
        foreach (var head in slot.Heads)
        {
            if (head.Note.Vibrato.Width != VibratoWidth.None) vibratos.Add(head.Note.Vibrato.Width, left, room);
        }
        var middle = x - slot.Shift + ColumnInk.Centre;
        strokes.Add(slot.Event.Stroke, middle);
        if (slot.Event.PickingFinger is { } finger && picking.HasRoom(middle - PickingHalf, middle + PickingHalf))
        {
            picking.Add(middle - PickingHalf, middle + PickingHalf, y => pen.Text(finger.ToString(), middle, y, HouseStyle.SmallSize, Face.SerifItalic, Anchor.Middle));
        }
    }

    private void AddMove(PlacedNote placed)
    {
        if (placed.Note.Attack is not (Attack.HammerOn or Attack.PullOff) || links.Before(placed.Note) is not { } from) return;
        var to = MiddleOf(placed);
        letters.AddMove(placed.Note.Attack, geometry.Has(from.Slot.Measure) ? MiddleOf(from) : to - 2, to);
    }

    private double MiddleOf(PlacedNote note) => SystemNotes.XOf(geometry, note) + ColumnInk.Centre * (note.IsGrace ? HouseStyle.GraceScale : 1);
}
