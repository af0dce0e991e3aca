using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws the pitches a bend reaches: small heads without stems after the chord, each slurred from the one before (common practice).</summary>
internal sealed class ReachedHeads(Pen pen)
{
    public const double Scale = 0.74;

    private const double Gap = 0.55;
    private const double RaiseStep = 0.25;
    private const int MostRaises = 16;

    private readonly double headWidth = pen.Ink.GlyphWidth(Smufl.NoteheadBlack) * Scale;

    /// <summary>How far right of the chord's ink they reach, with what is trilled after them.</summary>
    public static double Width(Slot slot) => WidthOf(slot.Reached) + TrilledHeads.WidthOf(slot.Trilled);

    public static double WidthOf(ImmutableArray<ReachedStep> reached) => reached.Sum(step => Gap + (step.Shape.Right - step.Shape.Left) * Scale);

    /// <summary>The last pitch that a note of a chord reaches: right end and middle of its small head; null when it reaches none.</summary>
    public Point? EndOf(Slot slot, int head, double x)
    {
        for (var step = slot.Reached.Length - 1; step >= 0; step--)
        {
            var index = slot.Reached[step].Of.IndexOf(head);
            if (index >= 0) return new Point(XOf(slot, step, index, x) + headWidth, slot.Reached[step].Heads[index].Y);
        }
        return null;
    }

    /// <param name="slot">The chord.</param>
    /// <param name="x">Its left edge.</param>
    /// <param name="above">Whether slurs go over the heads.</param>
    public void Draw(Slot slot, double x, bool above)
    {
        var side = above ? -1 : 1;
        // Over the highest note and under the lowest one; between the heads' columns, beside the other notes, for those inside a chord.
        var from = new Point[slot.Heads.Length];
        for (var i = 0; i < from.Length; i++)
        {
            var middle = slot.Shape.HeadX[i] + pen.Ink.GlyphWidth(Signs.GlyphOf(slot.Heads[i].Shape)) * 0.6;
            from[i] = IsInside(slot, i) ? new Point(x + slot.Shape.Right + 0.1, slot.Heads[i].Y + side * 0.2) : new Point(x + middle, slot.Heads[i].Y + SideOf(slot, i, side) * 0.65);
        }
        for (var step = 0; step < slot.Reached.Length; step++)
        {
            var (of, heads, shape) = slot.Reached[step];
            for (var i = 0; i < heads.Length; i++)
            {
                var at = XOf(slot, step, i, x);
                pen.Glyph(Smufl.NoteheadBlack, at, heads[i].Y, Scale);
                if (heads[i].Accidental is { } alteration) pen.Glyph(Signs.AccidentalOf(alteration), at + (shape.AccidentalX[i] - shape.HeadX[i]) * Scale, heads[i].Y, Scale);
                Ledgers(heads[i], at);
                from[of[i]] = IsInside(slot, of[i])
                    ? SlurBeside(from[of[i]], heads[i], at - (shape.HeadX[i] - shape.Left) * Scale - 0.08, at + (shape.Right - shape.HeadX[i]) * Scale + 0.1, side)
                    : SlurOver(from[of[i]], x + slot.Shape.Right + 0.1, step == 0 ? slot.Heads[of[i]].Y : from[of[i]].Y - SideOf(slot, of[i], side) * 0.52, heads[i], at, SideOf(slot, of[i], side), slot.Heads.Length == 1 && (slot.Beam >= 0 || slot.Flags == 0));
            }
        }
    }

    // Flags and tremolo strokes are on the stem's side of a chord.
    private static bool IsInside(Slot slot, int head) =>
        slot.Heads.Length > 1 && ((head > 0 && head < slot.Heads.Length - 1) || (((slot.Beam < 0 && slot.Flags > 0) || TremoloStrokes.Of(slot) > 0) && slot.Heads[head] == slot.NearTip));

    private static int SideOf(Slot slot, int head, int side) => slot.Heads.Length == 1 ? side : head == 0 ? 1 : -1;

    private Point SlurBeside(Point from, Head to, double left, double right, int side)
    {
        if (left - from.X > 0.2) pen.Slur(from.X, from.Y, left, to.Y + side * 0.2, side * 0.25);
        return new Point(right, to.Y + side * 0.2);
    }

    // Over what stands between; where the signs of another voice leave no way, a short one beside them.
    private Point SlurOver(Point starts, double beside, double headY, Head to, double at, int side, bool mayTurn)
    {
        for (var tries = 0; tries < MostRaises; tries++)
        {
            foreach (var tried in mayTurn ? (int[])[side, -side] : [side])
            {
                if (IsDrawn(tried, tries * RaiseStep)) return new Point(at + headWidth / 2, to.Y + tried * 0.52);
            }
        }
        if (starts.X < beside) return SlurBeside(new Point(beside, headY + side * 0.2), to, at - (to.Accidental is null ? 0.08 : 0.9), at + headWidth + 0.1, side);
        return new Point(at + headWidth / 2, to.Y + side * 0.52);

        bool IsDrawn(int tried, double raised)
        {
            // Over the small head's own accidental.
            var endY = to.Y + tried * (to.Accidental is null ? 0.52 : 1.6);
            var startY = tried == side ? starts.Y : headY + tried * 0.65;
            if (to.Accidental is not null) startY = tried < 0 ? Math.Min(startY, endY + 0.6) : Math.Max(startY, endY - 0.6);
            double x1 = starts.X, x2 = at + headWidth / 2, y1 = startY + tried * raised, y2 = endY + tried * raised;
            var height = tried * Math.Clamp((x2 - x1) * 0.16, 0.3, 0.8);
            if (!pen.Signs.IsFreeSlur(x1, y1, x2, y2, height)) return false;
            pen.Slur(x1, y1, x2, y2, height);
            return true;
        }
    }

    private static double XOf(Slot slot, int step, int index, double x)
    {
        var at = x + slot.Shape.Right;
        for (var s = 0; s < step; s++) at += Gap + (slot.Reached[s].Shape.Right - slot.Reached[s].Shape.Left) * Scale;
        return at + Gap + (slot.Reached[step].Shape.HeadX[index] - slot.Reached[step].Shape.Left) * Scale;
    }

    private void Ledgers(Head head, double x)
    {
        for (var position = -2; position >= head.Position; position -= 2) Ledger(position);
        for (var position = 10; position <= head.Position; position += 2) Ledger(position);

        void Ledger(int position) => pen.Line(x - 0.22, 4 - position / 2.0, x + headWidth + 0.22, 4 - position / 2.0, pen.Ink.LedgerLine);
    }
}
