using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Guitar;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>
/// Draws string numbers in circles below a staff that has no tablature, where a single note is not on the string that has it nearest to
/// the nut; once for a run of notes on one string (common practice).
/// </summary>
internal sealed class StringCircles(Pen pen, StaffPlan staff, SystemGeometry geometry)
{
    private const double Scale = 0.7;

    public void Draw()
    {
        var row = new AlignedRow(pen);
        foreach (var place in geometry.Measures)
        {
            foreach (var voice in place.Measure.Parts[staff.Index].Voices)
            {
                StringNumber? shown = null;
                foreach (var slot in voice.Slots)
                {
                    if (slot.IsRest) continue;
                    var number = NumberFor(slot, staff.Part.Neck);
                    if (number is { } needed && number != shown) Add(row, needed, geometry.X(slot) - slot.Shift + ColumnInk.Centre);
                    shown = number;
                }
            }
        }
        row.DrawBelow(1.3, HouseStyle.StaffHeight + 2);
    }

    /// <summary>The string that a reader of the staff alone has to be told; null where it is the usual one.</summary>
    public static StringNumber? NumberFor(Slot slot, Neck neck)
    {
        if (slot.Heads is not [{ Note: var note }] || note.IsDead || note.IsTiedFromBefore) return null;
        if (note.Harmonic is not null) return note.String;
        for (var number = 1; number < note.String.Value; number++)
        {
            if (neck.Sounding(new StringNumber(number), Fret.Open).Midi <= note.Sounding.Midi) return note.String;
        }
        return null;
    }

    private void Add(AlignedRow row, StringNumber number, double middle)
    {
        var glyph = Smufl.GuitarString1 + number.Value - 1;
        var ink = pen.Ink.Glyph(glyph);
        var half = (ink.Right - ink.Left) * Scale / 2;
        if (row.HasRoom(middle - half, middle + half)) row.Add(middle - half, middle + half, y => pen.GlyphCentred(glyph, middle, y - ink.Bottom * Scale, Scale));
    }
}
