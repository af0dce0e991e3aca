using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Engraving.Layout.Systems;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>Draws fingers below the tablature: at each column those of all voices, highest string first; the fretting hand's over the picking hand's.</summary>
internal sealed class TabFingers(Pen pen, StaffPlan staff, SystemGeometry geometry, HandSigns hands, ChordRows chords)
{
    private const double FrettingHalf = 0.4;
    private const double PickingHalf = 0.65;

    // A chord symbol of the next part this near to a finger keeps off its line: they would read as one row.
    private const double Near = 12;

    private readonly AlignedRow fingers = new(pen);
    private readonly AlignedRow picking = new(pen);
    private readonly List<double> all = [];

    public void Draw()
    {
        foreach (var place in geometry.Measures) Add(place);
        var bottom = staff.TabHeight;
        fingers.DrawBelow(1.1, bottom + 1.7);
        picking.DrawBelow(1.1, bottom + 1.9);
        if (all.Count > 0) KeepChordsOff();
    }

    private void KeepChordsOff()
    {
        foreach (var place in geometry.Measures)
        {
            if (staff.Index + 1 >= place.Measure.Parts.Length) return;
            foreach (var (column, label) in chords.In(staff.Index + 1, place.Measure))
            {
                double left = place.Columns[column], right = left + label.Width;
                foreach (var x in all)
                {
                    if (x > left - Near && x < right + Near) pen.Skyline.Add(new Box(left, staff.TabHeight, right, pen.Skyline.Bottom(x - FrettingHalf, x + FrettingHalf)));
                }
            }
        }
    }

    private void Add(MeasurePlace place)
    {
        var part = place.Measure.Parts[staff.Index];
        for (var v = 0; v < part.Voices.Length; v++)
        {
            foreach (var slot in part.Voices[v].Slots)
            {
                if (!part.IsFirstOfColumn(v, slot)) continue;
                var middle = place.Columns[slot.Column] + ColumnInk.Centre;
                if (FingerNames.In(part, slot.Column, hands, lowFirst: false) is { Length: > 0 } shown) AddFrettingFingers(shown, middle);
                if (hands.Strokes && PickingFingerIn(part, slot.Column) is { } finger) AddPickingFinger(finger, middle);
            }
        }
    }

    private void AddFrettingFingers(string[] shown, double middle)
    {
        all.Add(middle);
        fingers.Add(middle - FrettingHalf, middle + FrettingHalf, y =>
        {
            for (var i = 0; i < shown.Length; i++) pen.Text(shown[i], middle, y + i * 1.3, HouseStyle.SmallSize * 0.9, Face.SansBold, Anchor.Middle);
        });
    }

    private void AddPickingFinger(char finger, double middle)
    {
        all.Add(middle);
        picking.Add(middle - PickingHalf, middle + PickingHalf, y => pen.Text(finger.ToString(), middle, y, HouseStyle.SmallSize, Face.SerifItalic, Anchor.Middle));
    }

    private static char? PickingFingerIn(MeasurePart part, int column)
    {
        foreach (var voice in part.Voices)
        {
            foreach (var slot in voice.Slots)
            {
                if (slot.Column == column && slot.Event.PickingFinger is { } finger) return finger;
            }
        }
        return null;
    }
}
