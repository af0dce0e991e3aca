using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>Draws bends: a curve from the number to an arrow with its amount, back down for a release, level for a hold.</summary>
internal sealed class BendDrawer(Pen pen)
{
    private const double Height = 1.7;
    private const double Step = 1.3;
    private const double Thickness = 0.15;
    private const double ArrowLength = 0.75;
    private const double ArrowHalf = 0.33;

    private readonly HashSet<(int Cents, double X, double Y)> amounts = [];

    /// <param name="note">The note.</param>
    /// <param name="middle">The middle of its number, or of where it would stand.</param>
    /// <param name="halfWidth">Half the number's width.</param>
    /// <param name="room">Where the next thing on the row begins.</param>
    /// <returns>Where the last move ends, for a vibrato that follows it.</returns>
    public double Draw(PlacedNote note, double middle, double halfWidth, double room)
    {
        if (note.Note.Bend is not { } bend) return middle + halfWidth;
        var line = TabRow.LineOf(note.Note);
        var heights = bend.ToCents.Items.Add(bend.FromCents).Where(c => c > 0).Distinct().Order().ToArray();
        var x = middle + halfWidth + 0.15;
        var y = line;
        if (bend.FromCents > 0)
        {
            var top = TopOf(bend.FromCents);
            if (note.Note.IsTiedFromBefore)
            {
                x = middle;
            }
            else
            {
                x = middle;
                pen.Line(x, line - 0.75, x, top + ArrowLength * 0.8, Thickness);
                Arrow(x, top, true);
                Amount(bend.FromCents, x, top);
            }
            y = top;
        }
        var moves = bend.ToCents.Count;
        if (moves == 0)
        {
            var end = Math.Max(x + 0.8, room - 0.5);
            pen.Line(x, y, end, y, Thickness, LineStyle.Dashed);
            return end;
        }
        var span = Math.Max(moves * 1.1, Math.Min(room - 0.7 - x, moves * 3.2));
        var cents = bend.FromCents;
        for (var i = 0; i < moves; i++)
        {
            var to = bend.ToCents[i];
            var goal = x + span / moves;
            var goalY = to <= 0 ? line - 0.55 : TopOf(to);
            if (to > cents)
            {
                pen.Curve(new(x, y), new(x + (goal - x) * 0.75, y), new(goal, y + (goalY - y) * 0.35), new(goal, goalY + ArrowLength * 0.8), Thickness);
                Arrow(goal, goalY, true);
                Amount(to, goal, goalY);
            }
            else
            {
                pen.Curve(new(x, y), new(x + (goal - x) * 0.75, y), new(goal, y + (goalY - y) * 0.35), new(goal, goalY - ArrowLength * 0.8), Thickness);
                Arrow(goal, goalY, false);
                if (to > 0) Amount(to, goal + 0.9, goalY + 0.6);
            }
            (x, y, cents) = (goal, goalY, to);
        }
        return x;

        double TopOf(int height) => -Height - Step * Math.Max(0, Array.IndexOf(heights, height));
    }

    private void Arrow(double x, double y, bool up)
    {
        var back = up ? y + ArrowLength : y - ArrowLength;
        pen.Polygon(new Point(x, y), new Point(x - ArrowHalf, back), new Point(x + ArrowHalf, back));
    }

    // Once for all notes that are bent together.
    private void Amount(int cents, double x, double y)
    {
        if (!amounts.Add((cents, Math.Round(x, 3), Math.Round(y, 3)))) return;
        pen.Text(BendAmounts.Of(cents), x, y - 0.3, HouseStyle.SmallSize, Face.Sans, Anchor.Middle);
    }
}
