using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Output;

/// <summary>The outline of a tie or slur: out along one cubic and back along another, thick in the middle and thin at the ends.</summary>
/// <param name="Out1">Controls of the way out.</param>
/// <param name="Out2">Controls of the way out.</param>
/// <param name="Back1">Controls of the way back, from the far end.</param>
/// <param name="Back2">Controls of the way back, from the far end.</param>
/// <remarks>
/// Filled, and stroked with the end thickness. A cubic whose two controls move by d moves by 3/4 d at its middle, so each side's controls
/// move by (middle - end) / 1.5 away from each other to give the middle thickness across the chord.
/// </remarks>
internal readonly record struct SlurShape(Point Out1, Point Out2, Point Back1, Point Back2)
{
    public static SlurShape Of(Slur slur)
    {
        var (dx, dy) = (slur.To.X - slur.From.X, slur.To.Y - slur.From.Y);
        var length = Math.Sqrt(dx * dx + dy * dy);
        var away = Math.Max(0, slur.MiddleThickness - slur.EndThickness) / 1.5;
        var offset = length == 0 ? default : new Point(-dy / length * away, dx / length * away);
        var opposite = new Point(-offset.X, -offset.Y);
        return new SlurShape(slur.Control1 + offset, slur.Control2 + offset, slur.Control2 + opposite, slur.Control1 + opposite);
    }
}
