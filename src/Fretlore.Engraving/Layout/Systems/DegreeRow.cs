using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>The degrees of the notes on a line below a part's last row; those of one moment under each other as their strings are.</summary>
internal sealed class DegreeRow(Pen pen, StaffPlan staff, SystemGeometry geometry, DegreeLabels degrees)
{
    private const double LineHeight = DegreeLabels.Size * 0.95;
    private const double LeastGap = 1.2;

    public void Draw()
    {
        if (!degrees.AreShown) return;
        var row = new AlignedRow(pen);
        foreach (var place in geometry.Measures)
        {
            var slots = place.Measure.Parts[staff.Index].Voices.SelectMany(v => v.Slots);
            foreach (var moment in slots.GroupBy(s => s.Column))
            {
                var labels = moment.SelectMany(degrees.Of).OrderBy(l => l.Note.String.Value).Select(l => l.Label).ToArray();
                if (labels.Length == 0) continue;
                var middle = geometry.X(moment.First()) - moment.First().Shift + ColumnInk.Centre;
                var half = labels.Max(l => l.Width) / 2;
                row.Add(middle - half, middle + half, y => Draw(labels, middle, y));
            }
        }
        var ascent = pen.Ink.DigitHeight(Face.SansBold, DegreeLabels.Size);
        row.DrawBelow(ascent, (staff.ShowsTab ? staff.TabHeight : HouseStyle.StaffHeight) + LeastGap + ascent);
    }

    private void Draw(DegreeLabel[] labels, double middle, double y)
    {
        for (var i = 0; i < labels.Length; i++)
        {
            MixedText.Draw(pen, labels[i].Text, middle - labels[i].Width / 2, y + i * LineHeight, DegreeLabels.Size, labels[i].Face);
        }
    }
}
