using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Layout;

/// <summary>Where the glyphs and texts of one row stand, so that slurs, glides and bends can be led around them.</summary>
internal sealed class SignMap
{
    private const double CellWidth = 4;

    private readonly List<List<Box>> cells = [];

    public void Add(Box ink)
    {
        for (var cell = CellOf(ink.Left); cell <= CellOf(ink.Right); cell++)
        {
            while (cells.Count <= cell) cells.Add([]);
            cells[cell].Add(ink);
        }
    }

    public void Clear()
    {
        foreach (var cell in cells) cell.Clear();
    }

    /// <summary>Whether no sign stands in a box.</summary>
    public bool IsFree(Box box)
    {
        for (var cell = CellOf(box.Left); cell <= Math.Min(CellOf(box.Right), cells.Count - 1); cell++)
        {
            foreach (var sign in cells[cell])
            {
                if (sign.Left < box.Right && box.Left < sign.Right && sign.Top < box.Bottom && box.Top < sign.Bottom) return false;
            }
        }
        return true;
    }

    /// <summary>Whether a tie or slur as <see cref="Pen.Slur"/> draws it touches no sign.</summary>
    public bool IsFreeSlur(double x1, double y1, double x2, double y2, double height)
    {
        const int Pieces = 20;
        const double Around = 0.2;
        var reach = SlurReach(x1, x2);
        var before = (X: x1, Y: y1);
        for (var i = 1; i <= Pieces; i++)
        {
            double t = i / (double)Pieces, u = 1 - t;
            var x = u * u * u * x1 + 3 * u * u * t * (x1 + reach) + 3 * u * t * t * (x2 - reach) + t * t * t * x2;
            var y = u * u * u * y1 + 3 * u * u * t * (y1 + height * 4 / 3) + 3 * u * t * t * (y2 + height * 4 / 3) + t * t * t * y2;
            if (!IsFree(new Box(before.X, Math.Min(before.Y, y) - Around, x, Math.Max(before.Y, y) + Around))) return false;
            before = (x, y);
        }
        return true;
    }

    /// <summary>How far from its ends the control points of a slur are.</summary>
    public static double SlurReach(double x1, double x2) => Math.Min((x2 - x1) * 0.3, 2.5);

    /// <summary>The longest stretch of a straight line that no sign stands on, as shares of the line from 0 to 1; null when there is none.</summary>
    public (double From, double To)? FreeRun(double x1, double y1, double x2, double y2, double around)
    {
        const int Pieces = 24;
        const double Beside = 0.1;
        (int From, int To) best = (0, 0), run = (0, 0);
        for (var i = 0; i < Pieces; i++)
        {
            double a = (double)i / Pieces, b = (i + 1.0) / Pieces;
            double ya = y1 + (y2 - y1) * a, yb = y1 + (y2 - y1) * b;
            run = IsFree(new Box(x1 + (x2 - x1) * a - Beside, Math.Min(ya, yb) - around, x1 + (x2 - x1) * b + Beside, Math.Max(ya, yb) + around)) ? (run.From, i + 1) : (i + 1, i + 1);
            if (run.To - run.From > best.To - best.From) best = run;
        }
        return best.To == best.From ? null : ((double)best.From / Pieces, (double)best.To / Pieces);
    }

    private static int CellOf(double x) => Math.Max(0, (int)(x / CellWidth));
}
