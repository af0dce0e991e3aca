using System.Globalization;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Tab;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws one chord: ledger lines, stem, flag, heads with accidentals, dots and articulation.</summary>
/// <param name="pen">Draws it.</param>
/// <param name="titles">What its notes are in words; null where they are said elsewhere.</param>
internal sealed class ChordDrawer(Pen pen, NoteTitles? titles)
{
    /// <param name="slot">The chord.</param>
    /// <param name="x">Its left edge.</param>
    /// <param name="tip">Where its stem ends.</param>
    /// <param name="rule">Its voice's side where two share the staff.</param>
    public void Draw(Slot slot, double x, double tip, StemSide rule)
    {
        DrawLedgers(slot, x);
        var shape = slot.Shape;
        if (slot.Stem != StemSide.None)
        {
            var up = slot.Stem == StemSide.Up;
            var foot = slot.FarFromTip;
            var anchor = pen.Ink.Music.AnchorOf(Signs.GlyphOf(foot.Shape), up ? "stemUpSE" : "stemDownNW");
            pen.Line(x + shape.StemX, foot.Y + (anchor?.Y ?? 0), x + shape.StemX, tip, pen.Ink.Stem);
            if (slot.Beam < 0 && slot.Flags > 0)
            {
                pen.Glyph(Signs.FlagOf(slot.Flags, up), x + shape.StemX - pen.Ink.Stem / 2, tip);
            }
        }
        for (var i = 0; i < slot.Heads.Length; i++) DrawHead(slot.Heads[i], x + shape.HeadX[i], x + shape.AccidentalX[i]);
        DrawGhostBrackets(slot, x);
        foreach (var (dotX, position) in shape.Dots) pen.Glyph(Smufl.AugmentationDot, x + dotX, 4 - position / 2.0);
        DrawTremolo(slot, x, tip);
        DrawArticulation(slot, x, tip, rule);
        if (slot.Event.Roll != Roll.None) DrawRoll(pen, slot.Event.Roll, x + (TremoloStrokes.Of(slot) > 0 ? Math.Min(shape.Left, shape.StemX - 0.75) : shape.Left) - 0.75, slot.Highest.Y - 0.5, slot.Lowest.Y + 0.5);
    }

    /// <summary>A wavy line beside a rolled chord, with an arrow only when it goes down; a straight arrow up beside a raked one.</summary>
    public static void DrawRoll(Pen pen, Roll roll, double x, double top, double bottom)
    {
        const double Wave = 0.8;
        if (roll == Roll.Rake)
        {
            pen.Line(x, top - 0.1, x, bottom, 0.14);
            pen.Polygon(new(x - 0.4, top), new(x + 0.4, top), new(x, top - 0.8));
            return;
        }
        var half = Math.Max(2, (int)Math.Round((bottom - top) / Wave * 2));
        var step = (bottom - top) / half;
        for (var i = 0; i < half; i++)
        {
            double y1 = top + i * step, y2 = y1 + step, side = i % 2 == 0 ? 0.34 : -0.34;
            pen.Curve(new(x, y1), new(x + side, y1 + step * 0.35), new(x + side, y2 - step * 0.35), new(x, y2), 0.16);
        }
        if (roll == Roll.HighToLow) pen.Polygon(new(x - 0.4, bottom), new(x + 0.4, bottom), new(x, bottom + 0.8));
    }

    private void DrawHead(Head head, double x, double accidentalX)
    {
        pen.Open();
        var glyph = Signs.GlyphOf(head.Shape);
        pen.Glyph(glyph, x, head.Y);
        if (head.Accidental is { } alteration) pen.Glyph(Signs.AccidentalOf(alteration), accidentalX, head.Y);
        pen.Close(string.Create(CultureInfo.InvariantCulture, $"head-{head.Note.Id.Index}"), titles?.Of(head.Note));
    }

    // Outside all heads of the chord; one pair for ghost notes that stand next to each other.
    private void DrawGhostBrackets(Slot slot, double x)
    {
        for (var first = 0; first < slot.Heads.Length; first++)
        {
            if (!slot.Heads[first].Note.IsGhost) continue;
            var last = first;
            while (last + 1 < slot.Heads.Length && slot.Heads[last + 1].Note.IsGhost && slot.Heads[last + 1].Position - slot.Heads[last].Position <= 3) last++;
            double left = x + slot.Shape.HeadX.Min(), right = x + slot.Shape.HeadX.Max() + slot.Heads.Max(h => pen.Ink.GlyphWidth(Signs.GlyphOf(h.Shape)));
            var middle = (slot.Heads[first].Y + slot.Heads[last].Y) / 2;
            var box = pen.Ink.Glyph(Smufl.NoteheadParenthesisLeft);
            var scale = Math.Min(1.8, (slot.Heads[first].Y - slot.Heads[last].Y + box.Bottom - box.Top) / (box.Bottom - box.Top));
            // The ends of larger brackets curve in over the outer heads.
            var gap = 0.13 + 0.32 * (scale - 1);
            pen.Glyph(Smufl.NoteheadParenthesisLeft, left - gap - box.Right * scale, middle, scale);
            pen.Glyph(Smufl.NoteheadParenthesisRight, right + gap, middle, scale);
            first = last;
        }
    }

    private void DrawLedgers(Slot slot, double x)
    {
        var ink = pen.Ink;
        for (var position = -2; position >= slot.Lowest.Position; position -= 2) Ledger(position);
        for (var position = 10; position <= slot.Highest.Position; position += 2) Ledger(position);

        void Ledger(int position)
        {
            double left = double.MaxValue, right = double.MinValue;
            for (var i = 0; i < slot.Heads.Length; i++)
            {
                if (position < 0 ? slot.Heads[i].Position > position : slot.Heads[i].Position < position) continue;
                left = Math.Min(left, x + slot.Shape.HeadX[i]);
                right = Math.Max(right, x + slot.Shape.HeadX[i] + ink.GlyphWidth(Signs.GlyphOf(slot.Heads[i].Shape)));
            }
            var y = 4 - position / 2.0;
            if (right > left) pen.Line(left - ink.LedgerExtension, y, right + ink.LedgerExtension, y, ink.LedgerLine);
        }
    }

    private void DrawTremolo(Slot slot, double x, double tip)
    {
        var strokes = TremoloStrokes.Of(slot);
        if (strokes == 0) return;
        var up = slot.Stem != StemSide.Down;
        // As far from the head as the stem leaves room for beside flags and beams.
        var away = TremoloStrokes.FromHead(slot) + TremoloStrokes.Height(strokes) / 2;
        var middle = (up ? slot.Highest.Y : slot.Lowest.Y) + (up ? -away : away);
        if (slot.Stem != StemSide.None && slot.Flags == 0) middle = up ? Math.Min(middle, (middle + tip + 1) / 2) : Math.Max(middle, (middle + tip - 1) / 2);
        var at = slot.Stem == StemSide.None ? x + 0.85 : x + slot.Shape.StemX;
        pen.GlyphCentred(Smufl.Tremolo1 + strokes - 1, at, middle);
    }

    // On the heads' side of the chord (Gould); staccato within the staff stands in a space, an accent outside the staff.
    private void DrawArticulation(Slot slot, double x, double tip, StemSide rule)
    {
        var accent = slot.Heads.Any(h => h.Note.IsAccented);
        var staccato = slot.Heads.Any(h => h.Note.IsStaccato);
        if (!accent && !staccato) return;
        var above = rule == StemSide.Up || (rule == StemSide.None && (slot.Stem == StemSide.Down || (slot.Stem == StemSide.None && slot.Highest.Position + slot.Lowest.Position >= 8)));
        var middle = x + pen.Ink.GlyphWidth(Signs.GlyphOf(slot.Heads[0].Shape)) / 2;
        var edge = above ? Math.Min(slot.Highest.Y, rule == StemSide.Up ? tip : slot.Highest.Y) : Math.Max(slot.Lowest.Y, rule == StemSide.Down ? tip : slot.Lowest.Y);
        var side = above ? -1 : 1;
        if (staccato)
        {
            var y = edge + side;
            if (y is > -0.2 and < 4.2 && Math.Abs(y - Math.Round(y)) < 0.1) y += side * 0.5;
            pen.GlyphCentred(above ? Smufl.ArticStaccatoAbove : Smufl.ArticStaccatoBelow, middle, y);
            edge = y;
        }
        if (!accent) return;
        var outside = above ? Math.Min(edge - 0.75, -0.5) : Math.Max(edge + 0.75, 4.5);
        pen.GlyphCentred(above ? Smufl.ArticAccentAbove : Smufl.ArticAccentBelow, middle, outside);
    }
}
