using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws the beams of a group on the staff.</summary>
internal sealed class BeamDrawer(Pen pen)
{
    private const double StubLength = 1.1;
    private const double Room = 0.3;

    /// <summary>Where a piece of a beam reaches; a short one over part of the way to its neighbour.</summary>
    public static (double Left, double Right) ExtentOf(BeamPiece piece, ReadOnlySpan<double> stems)
    {
        var x = stems[piece.First];
        if (piece.Last > piece.First) return (x, stems[piece.Last]);
        var room = piece.Forward ? stems[piece.First + 1] - x : x - stems[piece.First - 1];
        var length = Math.Min(StubLength, room * 0.6);
        return piece.Forward ? (x, x + length) : (x - length, x);
    }

    /// <param name="place">The measure.</param>
    /// <param name="part">All voices of the staff in it.</param>
    /// <param name="voice">The voice with the beam.</param>
    /// <param name="group">Its first and last slot under the beam.</param>
    public BeamEdge Draw(MeasurePlace place, MeasurePart part, Voice voice, (int First, int Last) group)
    {
        var count = group.Last - group.First + 1;
        var up = voice.Slots[group.First].Stem == StemSide.Up;
        var stems = new BeamStem[count];
        var at = new double[count];
        for (var i = 0; i < count; i++)
        {
            var slot = voice.Slots[group.First + i];
            at[i] = place.Columns[slot.Column] + slot.Shift + slot.Shape.StemX;
            var (under, beams) = (TremoloStrokes.StemFor(slot), slot.Flags);
            // What reaches under the beam that comes from the left, and under the one that goes on to the right.
            if (i > 0 && LeftReach(slot, up) is var reach and > 0) (under, beams) = (Math.Max(under, reach), Math.Max(beams, voice.Slots[group.First + i - 1].Flags));
            if (i < count - 1 && ReachedReach(slot, up) is var further and > 0) (under, beams) = (Math.Max(under, further), Math.Max(beams, voice.Slots[group.First + i + 1].Flags));
            stems[i] = new BeamStem(at[i], slot.NearTip.Y, beams, under);
        }
        var others = part.Voices.Length > 1 ? OthersBetween(place, part, voice, at[0], at[^1]) : [];
        var thickness = pen.Ink.Beam + (stems.Max(s => s.Beams) - 1) * HouseStyle.BeamPitch;
        var edge = BeamShape.Fit(stems, up, others.Count == 0 ? null : edge => others.TrueForAll(box => IsClear(box, edge, up ? thickness : -thickness)));
        foreach (var piece in BeamPieces.Of(place.Measure.Bar, voice, group))
        {
            var (left, right) = ExtentOf(piece, at);
            DrawPiece(edge, left, right, piece.Level, up);
        }
        return edge;
    }

    // Heads of other voices and their accidentals from the beam's first stem to its last.
    private List<Box> OthersBetween(MeasurePlace place, MeasurePart part, Voice voice, double left, double right)
    {
        var boxes = new List<Box>();
        foreach (var other in part.Voices)
        {
            if (other == voice) continue;
            foreach (var slot in other.Slots)
            {
                var x = place.Columns[slot.Column] + slot.Shift;
                for (var i = 0; i < slot.Heads.Length; i++)
                {
                    var head = slot.Heads[i];
                    boxes.Add(pen.Ink.Glyph(Signs.GlyphOf(head.Shape), x + slot.Shape.HeadX[i], head.Y));
                    if (head.Accidental is { } alteration) boxes.Add(pen.Ink.Glyph(Signs.AccidentalOf(alteration), x + slot.Shape.AccidentalX[i], head.Y));
                }
            }
        }
        boxes.RemoveAll(box => box.Right < left || box.Left > right);
        return boxes;
    }

    // A thickness above 0 goes down from the edge.
    private static bool IsClear(Box box, BeamEdge edge, double thickness)
    {
        const double Air = 0.1;
        double y1 = edge.At(Math.Max(box.Left, edge.X1)), y2 = edge.At(Math.Min(box.Right, edge.X2));
        var top = Math.Min(y1, y2) + Math.Min(0, thickness) - Air;
        var bottom = Math.Max(y1, y2) + Math.Max(0, thickness) + Air;
        return box.Bottom <= top || box.Top >= bottom;
    }

    // From the head nearest to the beam to where a beam may begin: over its accidental and its grace notes. The beam may slant towards them.
    private double LeftReach(Slot slot, bool up)
    {
        var reach = 0.0;
        foreach (var head in slot.Heads)
        {
            if (head.Accidental is not { } alteration) continue;
            var sign = pen.Ink.Glyph(Signs.AccidentalOf(alteration));
            var end = head.Y + (up ? sign.Top : sign.Bottom);
            reach = Math.Max(reach, (up ? slot.NearTip.Y - end : end - slot.NearTip.Y) + Room);
        }
        if (slot.Graces.Length == 0) return reach;
        var edge = up ? GraceDrawer.TipOf(slot) : slot.Graces.Max(g => g.Y) + 1;
        return Math.Max(reach, (up ? slot.NearTip.Y - edge : edge - slot.NearTip.Y) + Room);
    }

    // Over the small heads that a bend or a trill reaches, and their accidentals.
    private double ReachedReach(Slot slot, bool up)
    {
        var reach = 0.0;
        foreach (var step in slot.Trilled is { } trilled ? slot.Reached.Add(trilled) : slot.Reached)
        {
            foreach (var head in step.Heads)
            {
                var sign = pen.Ink.Glyph(head.Accidental is { } alteration ? Signs.AccidentalOf(alteration) : Fonts.Smufl.NoteheadBlack);
                var edge = head.Y + (up ? sign.Top : sign.Bottom) * ReachedHeads.Scale;
                reach = Math.Max(reach, (up ? slot.NearTip.Y - edge : edge - slot.NearTip.Y) + Room);
            }
        }
        return reach;
    }

    private void DrawPiece(BeamEdge edge, double left, double right, int level, bool up)
    {
        var half = pen.Ink.Stem / 2;
        var inwards = (pen.Ink.Beam / 2 + (level - 1) * HouseStyle.BeamPitch) * (up ? 1 : -1);
        pen.Beam(left - half, edge.At(left - half) + inwards, right + half, edge.At(right + half) + inwards, pen.Ink.Beam);
    }
}
