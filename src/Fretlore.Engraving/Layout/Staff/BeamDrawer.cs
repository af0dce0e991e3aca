using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws the beams of a group on the staff.</summary>
internal sealed class BeamDrawer(Pen pen)
{
    private const double StubLength = 1.1;

    /// <summary>Where a piece of a beam reaches; a short one over part of the way to its neighbour.</summary>
    public static (double Left, double Right) ExtentOf(BeamPiece piece, ReadOnlySpan<double> stems)
    {
        var x = stems[piece.First];
        if (piece.Last > piece.First) return (x, stems[piece.Last]);
        var room = piece.Forward ? stems[piece.First + 1] - x : x - stems[piece.First - 1];
        var length = Math.Min(StubLength, room * 0.6);
        return piece.Forward ? (x, x + length) : (x - length, x);
    }

    public BeamEdge Draw(MeasurePlace place, Voice voice, (int First, int Last) group)
    {
        var count = group.Last - group.First + 1;
        var up = voice.Slots[group.First].Stem == StemSide.Up;
        var stems = new BeamStem[count];
        var at = new double[count];
        for (var i = 0; i < count; i++)
        {
            var slot = voice.Slots[group.First + i];
            at[i] = place.Columns[slot.Column] + slot.Shift + slot.Shape.StemX;
            stems[i] = new BeamStem(at[i], slot.NearTip.Y, slot.Flags, TremoloStrokes.StemFor(slot));
        }
        var edge = BeamShape.Fit(stems, up);
        foreach (var piece in BeamPieces.Of(place.Measure.Bar, voice, group))
        {
            var (left, right) = ExtentOf(piece, at);
            DrawPiece(edge, left, right, piece.Level, up);
        }
        return edge;
    }

    private void DrawPiece(BeamEdge edge, double left, double right, int level, bool up)
    {
        var half = pen.Ink.Stem / 2;
        var inwards = (pen.Ink.Beam / 2 + (level - 1) * HouseStyle.BeamPitch) * (up ? 1 : -1);
        pen.Beam(left - half, edge.At(left - half) + inwards, right + half, edge.At(right + half) + inwards, pen.Ink.Beam);
    }
}
