using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout;

/// <summary>Carries marks from a row's own coordinates to the page's.</summary>
internal static class MovedMarks
{
    public static Mark Moved(this Mark mark, double dx, double dy)
    {
        var by = new Point(dx, dy);
        return mark switch
        {
            Glyph g => g with { At = g.At + by },
            Line l => l with { From = l.From + by, To = l.To + by },
            Text t => t with { At = t.At + by },
            Fill f => f with { Box = new Box(f.Box.Left + dx, f.Box.Top + dy, f.Box.Right + dx, f.Box.Bottom + dy) },
            Slur s => s with { From = s.From + by, Control1 = s.Control1 + by, Control2 = s.Control2 + by, To = s.To + by },
            Curve c => c with { From = c.From + by, Control1 = c.Control1 + by, Control2 = c.Control2 + by, To = c.To + by },
            Polygon p => new Polygon(Moved(p.Points, by)),
            Group g => g with { Marks = Moved(g.Marks, dx, dy) },
            _ => throw new InvalidOperationException($"{mark.GetType().Name} has no place to move."),
        };
    }

    public static ValueList<Mark> Moved(this ValueList<Mark> marks, double dx, double dy) =>
        new(ImmutableArray.CreateRange(marks.Items, static (mark, by) => mark.Moved(by.X, by.Y), new Point(dx, dy)));

    private static ValueList<Point> Moved(ValueList<Point> points, Point by) =>
        new(ImmutableArray.CreateRange(points.Items, static (point, by) => point + by, by));
}
