using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws what the hands do above a staff that has no tablature to show it: letters, strokes, vibrato, picking fingers.</summary>
internal sealed class StaffPlaying(Pen pen, StaffPlan staff, SystemGeometry geometry, ScoreModel model)
{
    private const double PickingHalf = 0.65;
    private const double FingerHalf = 0.4;

    // White on both sides of a finger that letters keep off its line.
    private const double FingerClear = 2;

    private readonly Links links = model.Links;
    private readonly HandLetters letters = new(pen);
    private readonly VibratoLines vibratos = new(pen);
    private readonly StackedRows letterRow = new(pen);
    private readonly StrokeSigns strokes = new(pen);
    private readonly AlignedRow picking = new(pen);
    private readonly AlignedRow fingers = new(pen);
    private readonly List<double> fingered = [];

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
            AddFingers(place);
        }
        fingers.DrawAbove(0.1, 0.8);
        foreach (var x in fingered) pen.Skyline.Add(new Box(x - FingerClear, pen.Skyline.Top(x - FingerHalf, x + FingerHalf), x + FingerClear, 0));
        picking.DrawAbove(0.4, 0.8);
        letters.Place(letterRow);
        letterRow.DrawAbove(0, 0.8);
        strokes.Draw(0.9);
        vibratos.Draw();
        new StringCircles(pen, staff, geometry).Draw();
    }

    private void DrawSlot(Slot slot, double room)
    {
        var x = geometry.X(slot);
        // A vibrato at the top of a bend begins over the head of the pitch it reaches.
        var left = x + (slot.Reached.IsEmpty ? 0.2 : slot.Shape.Right + ReachedHeads.WidthOf(slot.Reached) - 0.9);
        foreach (var head in slot.Heads)
        {
            if (head.Note.Vibrato.Width != VibratoWidth.None) vibratos.Add(head.Note.Vibrato.Width, left, room);
        }
        var middle = x - slot.Shift + ColumnInk.Centre;
        if (!model.Hands.Strokes) return;
        strokes.Add(slot.Event.Stroke, middle);
        if (slot.Event.PickingFinger is { } finger && picking.HasRoom(middle - PickingHalf, middle + PickingHalf)) AddPickingFinger(finger, middle);
    }

    private void AddPickingFinger(char finger, double middle) =>
        picking.Add(middle - PickingHalf, middle + PickingHalf, y => pen.Text(finger.ToString(), middle, y, HouseStyle.SmallSize, Face.SerifItalic, Anchor.Middle));

    // Over each column, those of all voices, highest string on top.
    private void AddFingers(MeasurePlace place)
    {
        var part = place.Measure.Parts[staff.Index];
        for (var v = 0; v < part.Voices.Length; v++)
        {
            foreach (var slot in part.Voices[v].Slots)
            {
                if (part.IsFirstOfColumn(v, slot) && FingerNames.In(part, slot.Column, model.Hands, lowFirst: true) is { Length: > 0 } stated)
                {
                    AddFingers(stated, place.Columns[slot.Column] + ColumnInk.Centre);
                }
            }
        }
    }

    private void AddFingers(string[] stated, double middle)
    {
        fingered.Add(middle);
        fingers.Add(middle - FingerHalf, middle + FingerHalf, y =>
        {
            for (var i = 0; i < stated.Length; i++) pen.Text(stated[i], middle, y - i * 1.3, HouseStyle.SmallSize * 0.9, Face.SansBold, Anchor.Middle);
        });
    }

    private void AddMove(PlacedNote placed)
    {
        if (placed.Note.Attack is not (Attack.HammerOn or Attack.PullOff) || links.Before(placed.Note) is not { } from) return;
        var to = MiddleOf(placed);
        letters.AddMove(placed.Note.Attack, geometry.Has(from.Slot.Measure) ? MiddleOf(from) : to - 2, to);
    }

    private double MiddleOf(PlacedNote note) => SystemNotes.XOf(geometry, note) + ColumnInk.Centre * (note.IsGrace ? HouseStyle.GraceScale : 1);
}
