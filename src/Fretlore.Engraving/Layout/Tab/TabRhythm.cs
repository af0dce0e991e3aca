using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>Writes time on tablature that has no staff over it: stems, flags, beams, dots and tuplets outside the lines, rests between them.</summary>
/// <remarks>A half note has half a stem and a whole note none (common practice). One voice has its stems below, a second one above.</remarks>
internal sealed class TabRhythm(Pen pen, StaffPlan staff, SystemGeometry geometry)
{
    private const double Start = 1.0;
    private const double StemLength = 2.7;
    private const double HalfStem = 1.4;
    private const double BeamPitch = 0.72;
    private const double StrokesStart = 0.25;
    private const double FlagHeight = 1.9;
    private const double FlagScale = 0.8;

    public void Draw(MeasurePlace place, MeasurePart part)
    {
        var overBends = part.Voices.Length > 1 ? BendDrawer.ReachAbove(part) : 0;
        for (var v = 0; v < part.Voices.Length; v++)
        {
            var voice = part.Voices[v];
            var isAbove = part.Voices.Length > 1 && v == 0;
            var side = new Side(isAbove, staff.TabHeight, isAbove ? overBends : 0);
            var length = 0.0;
            foreach (var slot in voice.Slots) length = Math.Max(length, LengthOf(slot));
            var tip = side.Away(Start + length);
            foreach (var slot in voice.Slots)
            {
                if (slot.IsRest) DrawRest(slot, part, v, side);
                else DrawStem(slot, side, tip);
            }
            foreach (var group in voice.Beams) DrawBeams(place, voice, group, side, tip);
            foreach (var tuplet in voice.Tuplets) DrawTuplet(voice, tuplet, side, tip);
        }
    }

    // All stems of a bar end where the longest does, so that its beams are level.
    private static double LengthOf(Slot slot)
    {
        var length = StemLength + Math.Max(0, slot.Flags - 2) * BeamPitch;
        var strokes = TremoloStrokes.Of(slot);
        if (strokes == 0 || slot.Flags == 0) return length;
        return Math.Max(length, StrokesStart + TremoloStrokes.Height(strokes) + 0.3 + (slot.Beam < 0 ? FlagHeight : 0) + slot.Flags * BeamPitch);
    }

    private double XOf(Slot slot) => geometry.X(slot) - slot.Shift + ColumnInk.Centre;

    private void DrawStem(Slot slot, Side side, double tip)
    {
        var x = XOf(slot);
        var from = side.Away(Start);
        var value = slot.Event.Value;
        if (value.Base == ValueBase.Half) pen.Line(x, from, x, side.Away(Start + HalfStem), pen.Ink.Stem);
        else if (value.Base > ValueBase.Half) pen.Line(x, from, x, tip, pen.Ink.Stem);
        if (slot.Beam < 0 && slot.Flags > 0) pen.Glyph(Signs.FlagOf(slot.Flags, side.IsAbove), x - pen.Ink.Stem / 2, tip, FlagScale);
        for (var dot = 0; dot < value.Dots; dot++) pen.Glyph(Smufl.AugmentationDot, x + DotX(slot) + dot * 0.6, side.Away(Start + 0.45));
        var strokes = TremoloStrokes.Of(slot);
        if (strokes > 0) pen.GlyphCentred(Smufl.Tremolo1 + strokes - 1, x, side.Away(Start + StrokesStart + TremoloStrokes.Height(strokes) / 2));
    }

    /// <summary>How far right of its stem a dot begins: clear of a flag and of tremolo strokes.</summary>
    public static double DotX(Slot slot) => slot.Beam < 0 && slot.Flags > 0 ? 1.05 : TremoloStrokes.Of(slot) > 0 ? 0.85 : 0.4;

    // Between the lines; with two voices outside them, level with their stems.
    private void DrawRest(Slot slot, MeasurePart part, int voice, Side side)
    {
        if (slot.Event.IsAirStroke) return;
        if (voice > 0 && part.Voices[0].Slots.Any(s => s.Column == slot.Column && s.IsRest && s.Event.Value == slot.Event.Value)) return;
        var (glyph, y) = Signs.RestOf(slot.Event.Value.Base);
        var ink = pen.Ink.Glyph(glyph);
        var shift = part.Voices.Length == 1 ? staff.TabHeight / 2 - 2
            : side.IsAbove ? side.Away(Start) - ink.Bottom - y : side.Away(Start) - ink.Top - y;
        var x = geometry.X(slot);
        pen.Glyph(glyph, x, y + shift);
        for (var dot = 0; dot < slot.Event.Value.Dots; dot++) pen.Glyph(Smufl.AugmentationDot, x + pen.Ink.GlyphWidth(glyph) + 0.3 + dot * 0.6, 1.5 + shift);
    }

    private void DrawBeams(MeasurePlace place, Voice voice, (int First, int Last) group, Side side, double tip)
    {
        var at = new double[group.Last - group.First + 1];
        for (var i = 0; i < at.Length; i++) at[i] = XOf(voice.Slots[group.First + i]);
        var half = pen.Ink.Stem / 2;
        foreach (var piece in BeamPieces.Of(place.Measure.Bar, voice, group))
        {
            var (left, right) = BeamDrawer.ExtentOf(piece, at);
            var y = tip + (pen.Ink.Beam / 2 + (piece.Level - 1) * BeamPitch) * (side.IsAbove ? 1 : -1);
            pen.Beam(left - half, y, right + half, y, pen.Ink.Beam);
        }
    }

    private void DrawTuplet(Voice voice, TupletGroup tuplet, Side side, double tip)
    {
        double left = XOf(voice.Slots[tuplet.First]), right = XOf(voice.Slots[tuplet.Last]);
        var middle = (left + right) / 2;
        var y = tip + (side.IsAbove ? -1.05 : 1.05);
        TupletDrawer.DrawNumber(pen, tuplet.Label, middle, y);
        if (tuplet.IsBeamed) return;
        var gap = TupletDrawer.Width(pen.Ink, tuplet.Label) / 2 + 0.3;
        var hook = side.IsAbove ? 0.6 : -0.6;
        foreach (var (from, to) in ((double, double)[])[(left - 0.5, middle - gap), (right + 0.5, middle + gap)])
        {
            pen.Line(from, y + hook, from, y, pen.Ink.Hairline);
            if (Math.Abs(to - from) > 0.2) pen.Line(Math.Min(from, to), y, Math.Max(from, to), y, pen.Ink.Hairline);
        }
    }

    /// <param name="IsAbove">Above the lines or below.</param>
    /// <param name="Height">From the top line to the bottom one.</param>
    /// <param name="Bends">How far bends reach on this side, outside of which time is written.</param>
    private readonly record struct Side(bool IsAbove, double Height, double Bends)
    {
        /// <summary>So far outside the lines.</summary>
        public double Away(double distance) => IsAbove ? -Bends - distance : Height + distance;
    }
}
