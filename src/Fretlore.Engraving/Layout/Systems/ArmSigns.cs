using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Tab;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Draws above a row where the tremolo arm dips a note, with how far, and where strings are raked.</summary>
internal sealed class ArmSigns(Pen pen, StaffPlan staff, SystemGeometry geometry)
{
    private const double DipHalf = 0.55;
    private const double DipHeight = 0.9;
    private const string Rake = "rake";

    private readonly StackedRows dips = new(pen);
    private readonly StackedRows rakes = new(pen);

    public void Draw()
    {
        foreach (var place in geometry.Measures)
        {
            foreach (var voice in place.Measure.Parts[staff.Index].Voices)
            {
                foreach (var slot in voice.Slots) Add(slot);
            }
        }
        dips.DrawAbove(0, 0.8);
        rakes.DrawAbove(0.1, 0.8);
    }

    private void Add(Slot slot)
    {
        var middle = geometry.X(slot) - slot.Shift + ColumnInk.Centre;
        var cents = 0;
        foreach (var head in slot.Heads) cents = Math.Max(cents, head.Note.DipCents);
        if (cents > 0) AddDip(middle, "\u2212" + AmountOf(cents));
        if (slot.Event.Roll == Roll.Rake) AddRake(middle);
    }

    private void AddRake(double middle)
    {
        var half = pen.Ink.TextWidth(Rake, Face.SerifItalic, HouseStyle.SmallSize) / 2;
        rakes.Add(middle - half, middle + half, y => pen.Text(Rake, middle, y, HouseStyle.SmallSize, Face.SerifItalic, Anchor.Middle));
    }

    // The way of the pitch, down and back, under its depth.
    private void AddDip(double middle, string amount)
    {
        var half = Math.Max(DipHalf, pen.Ink.TextWidth(amount, Face.Sans, HouseStyle.SmallSize) / 2);
        dips.Add(middle - half, middle + half, y =>
        {
            pen.Line(middle - DipHalf, y - DipHeight, middle, y, 0.14);
            pen.Line(middle, y, middle + DipHalf, y - DipHeight, 0.14);
            pen.Text(amount, middle, y - DipHeight - 0.3, HouseStyle.SmallSize, Face.Sans, Anchor.Middle);
        });
    }

    // In whole steps, as bends are.
    private static string AmountOf(int cents) => cents == 200 ? "1" : BendAmounts.Of(cents);
}
