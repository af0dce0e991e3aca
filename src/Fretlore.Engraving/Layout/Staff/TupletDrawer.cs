using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws tuplet numbers, at the beam; with a bracket when no beam shows the group.</summary>
internal sealed class TupletDrawer(Pen pen)
{
    private const double Hook = 0.7;
    private const double FromInk = 0.85;

    public void Draw(Voice voice, TupletGroup tuplet, SystemGeometry geometry, BeamEdge[] edges)
    {
        Slot first = voice.Slots[tuplet.First], last = voice.Slots[tuplet.Last];
        var stems = voice.Slots.AsSpan(tuplet.First, tuplet.Last - tuplet.First + 1);
        var up = IsAbove(stems, voice.Rule);
        var left = geometry.X(first);
        var right = geometry.X(last) + (last.IsRest ? 1.1 : last.Shape.StemX + pen.Ink.Stem);
        if (tuplet.IsBeamed)
        {
            var edge = edges[first.Beam];
            double x1 = left + first.Shape.StemX, x2 = geometry.X(last) + last.Shape.StemX;
            var middle = (x1 + x2) / 2;
            up = first.Stem == StemSide.Up;
            // Outside the beam and outside the staff, whose lines would spoil the number.
            var half = Width(pen.Ink, tuplet.Label) / 2;
            DrawNumber(pen, tuplet.Label, middle, up
                ? Math.Min(Math.Min(edge.At(middle) - 1.0, -0.95), pen.Skyline.Top(middle - half, middle + half) - FromInk)
                : Math.Max(Math.Max(edge.At(middle) + 1.0, 4.95), pen.Skyline.Bottom(middle - half, middle + half) + FromInk));
            return;
        }
        var y = up ? Math.Min(pen.Skyline.Top(left, right) - 1.1, -1.1) : Math.Max(pen.Skyline.Bottom(left, right) + 1.1, 5.1);
        var centre = (left + right) / 2;
        var gap = Width(pen.Ink, tuplet.Label) / 2 + 0.35;
        var hook = up ? Hook : -Hook;
        pen.Line(left, y + hook, left, y, pen.Ink.Hairline);
        pen.Line(right, y + hook, right, y, pen.Ink.Hairline);
        if (right - left > gap * 2 + 0.4)
        {
            pen.Line(left, y, centre - gap, y, pen.Ink.Hairline);
            pen.Line(centre + gap, y, right, y, pen.Ink.Hairline);
        }
        DrawNumber(pen, tuplet.Label, centre, y);
    }

    private static bool IsAbove(ReadOnlySpan<Slot> slots, StemSide rule)
    {
        if (rule != StemSide.None) return rule == StemSide.Up;
        var balance = 0;
        foreach (var slot in slots) balance += slot.Stem == StemSide.Down ? -1 : slot.Stem == StemSide.Up ? 1 : 0;
        return balance >= 0;
    }

    public static double Width(Ink ink, string label) => label.Sum(c => ink.Music.AdvanceOf(GlyphOf(c)));

    /// <summary>A tuplet's number centred on a place.</summary>
    public static void DrawNumber(Pen pen, string label, double middle, double y)
    {
        var x = middle - Width(pen.Ink, label) / 2;
        foreach (var c in label)
        {
            var box = pen.Ink.Glyph(GlyphOf(c));
            pen.Glyph(GlyphOf(c), x, y - (box.Top + box.Bottom) / 2);
            x += pen.Ink.Music.AdvanceOf(GlyphOf(c));
        }
    }

    private static int GlyphOf(char c) => c == ':' ? Smufl.TupletColon : Smufl.Tuplet0 + (c - '0');
}
