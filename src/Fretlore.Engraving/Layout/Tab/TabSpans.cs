using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>Draws what holds over several notes, above the tablature: a label, dashes and a hook where it ends.</summary>
internal sealed class TabSpans(Pen pen, StaffPlan staff, SystemGeometry geometry)
{
    private const double Hook = 0.75;

    // One row a kind; nearest to the tablature first.
    private static readonly (string Label, Func<Slot, bool> Holds)[] Kinds =
    [
        ("P.M.", slot => slot.Heads.Any(h => h.Note.IsPalmMuted)),
        ("let ring", slot => slot.Heads.Any(h => h.Note.LetsRing)),
        ("trem. pick", slot => slot.Event.Spans.HasFlag(Spans.TremoloPicking)),
        ("w/ bar", slot => slot.Event.Spans.HasFlag(Spans.TremoloArm)),
        ("wah", slot => slot.Event.Spans.HasFlag(Spans.Wah)),
    ];

    public void Draw()
    {
        foreach (var (label, holds) in Kinds)
        {
            var row = new AlignedRow(pen);
            foreach (var (left, right, isLong) in Runs(holds)) Add(row, label, left, right, isLong);
            row.DrawAbove(0.1, 0.8);
        }
    }

    // Rests inside a run don't end it; a note without the technique does.
    private List<(double Left, double Right, bool IsLong)> Runs(Func<Slot, bool> holds)
    {
        var runs = new List<(double, double, bool)>();
        foreach (var kind in new[] { 0, 1, 2 })
        {
            double left = double.NaN, right = 0;
            var count = 0;
            foreach (var place in geometry.Measures)
            {
                var voices = place.Measure.Parts[staff.Index].Voices;
                if (voices.Length <= kind) continue;
                foreach (var slot in voices[kind].Slots)
                {
                    if (slot.IsRest) continue;
                    if (holds(slot))
                    {
                        if (double.IsNaN(left)) left = geometry.X(slot);
                        right = geometry.X(slot) + 1.3;
                        count++;
                    }
                    else
                    {
                        Finish();
                    }
                }
            }
            Finish();

            void Finish()
            {
                if (!double.IsNaN(left)) runs.Add((left, right, count > 1));
                left = double.NaN;
                count = 0;
            }
        }
        return runs;
    }

    private void Add(AlignedRow row, string label, double left, double right, bool isLong)
    {
        var start = left - 0.1;
        var width = pen.Ink.TextWidth(label, Face.Sans, HouseStyle.SmallSize);
        var dashes = start + width + 0.35;
        var hasLine = isLong && right - dashes > 0.5;
        row.Add(start, hasLine ? right : start + width, y =>
        {
            pen.Text(label, start, y, HouseStyle.SmallSize, Face.Sans);
            if (!hasLine) return;
            var middle = y - 0.45;
            pen.Line(dashes, middle, right, middle, pen.Ink.Hairline, LineStyle.Dashed);
            pen.Line(right, middle, right, middle + Hook, pen.Ink.Hairline);
        });
    }
}
