using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;

namespace Fretlore.Engraving.Layout.Fretting;

/// <summary>Draws Roman numerals where the hand goes to a position.</summary>
internal sealed class PositionRow(Pen pen, StaffPlan staff, SystemGeometry geometry, HandSigns hands)
{
    private const double Size = HouseStyle.SmallSize;

    public void Draw()
    {
        var row = new AlignedRow(pen);
        foreach (var place in geometry.Measures)
        {
            foreach (var mark in hands.PositionsIn(staff.PartIndex, place.Measure.FirstBar))
            {
                var column = 0;
                while (column < place.Columns.Length && place.Measure.Columns[column].Time != mark.At) column++;
                if (column == place.Columns.Length) continue;
                var text = Numeral(mark.Position);
                var (x, width) = (place.Columns[column], pen.Ink.TextWidth(text, Face.SerifBold, Size));
                row.Add(x, x + width, y => pen.Text(text, x, y, Size, Face.SerifBold));
            }
        }
        row.DrawAbove(0.1, 0.7);
    }

    /// <summary>A number from 1 to 39 in Roman numerals.</summary>
    public static string Numeral(int number)
    {
        ReadOnlySpan<(int Value, string Letters)> values = [(10, "X"), (9, "IX"), (5, "V"), (4, "IV"), (1, "I")];
        var text = "";
        foreach (var (value, letters) in values)
        {
            for (; number >= value; number -= value) text += letters;
        }
        return text;
    }
}
