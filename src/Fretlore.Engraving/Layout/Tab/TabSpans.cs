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
            // Runs that come closer than their words allow, as in two voices, go on rows above each other.
            var rows = new StackedRows(pen);
            foreach (var run in Runs(holds).OrderBy(r => r.Left)) Add(rows, label, run);
            rows.DrawAbove(0.1, 0.8);
        }
    }

    // Rests inside a run don't end it; a note without the technique does.
    private List<Run> Runs(Func<Slot, bool> holds)
    {
        var runs = new List<Run>();
        for (var kind = 0; kind < 3; kind++)
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
            var next = geometry.Next?.Parts[staff.Index].Voices.ElementAtOrDefault(kind)?.Slots.FirstOrDefault(s => !s.IsRest);
            Finish(next is not null && holds(next));

            void Finish(bool goesOn = false)
            {
                if (!double.IsNaN(left)) runs.Add(new Run(left, goesOn ? geometry.Right - 0.2 : right, count > 1 || goesOn, goesOn));
                left = double.NaN;
                count = 0;
            }
        }
        return runs;
    }

    private void Add(StackedRows rows, string label, Run run)
    {
        var right = run.Right;
        var width = pen.Ink.TextWidth(label, Face.Sans, HouseStyle.SmallSize);
        var start = Math.Min(run.Left - 0.1, geometry.LinesRight - width);
        var dashes = start + width + 0.35;
        var hasLine = run.IsLong && right - dashes > 0.5;
        var end = hasLine ? right : start + width;
        rows.Add(start, end, y =>
        {
            pen.Text(label, start, y, HouseStyle.SmallSize, Face.Sans);
            if (!hasLine) return;
            var middle = y - 0.45;
            pen.Line(dashes, middle, right, middle, pen.Ink.Hairline, LineStyle.Dashed);
            if (!run.GoesOn) pen.Line(right, middle, right, middle + Hook, pen.Ink.Hairline);
        });
    }

    /// <summary>Neighbouring notes of a voice that share a technique.</summary>
    /// <param name="Left">Where the first one stands.</param>
    /// <param name="Right">Where the last one ends.</param>
    /// <param name="IsLong">Whether there is more than one.</param>
    /// <param name="GoesOn">Whether the next system begins with another one.</param>
    private readonly record struct Run(double Left, double Right, bool IsLong, bool GoesOn);
}
