using System.Runtime.InteropServices;
using Fretlore.Engraving.Drawing;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout;

/// <summary>Draws into one row of a system in the row's own coordinates, and keeps the row's skyline.</summary>
internal sealed class Pen(Ink ink, Skyline skyline)
{
    private readonly List<Mark> drawn = [];

    // Where in what is drawn each open group begins.
    private readonly Stack<int> open = [];

    public Ink Ink => ink;

    public Skyline Skyline => skyline;

    /// <summary>The glyphs and texts drawn so far.</summary>
    public SignMap Signs => skyline.Signs;

    public void Open() => open.Push(drawn.Count);

    /// <summary>Closes what was opened last as a group.</summary>
    public void Close(string? id, string? title)
    {
        var marks = TakeFrom(open.Pop());
        if (marks.Count > 0) drawn.Add(new Group(id, title, marks));
    }

    /// <summary>Everything drawn since the last take, outside of open groups.</summary>
    public ValueList<Mark> Take() => TakeFrom(open.TryPeek(out var start) ? start : 0);

    public void Glyph(int codePoint, double x, double y, double scale = 1)
    {
        drawn.Add(new Glyph(codePoint, new Point(x, y), scale));
        var box = ink.Glyph(codePoint, x, y, scale);
        skyline.Add(box);
        Signs.Add(box);
    }

    /// <summary>A glyph whose ink is centred at a place from left to right.</summary>
    public void GlyphCentred(int codePoint, double x, double y, double scale = 1)
    {
        var box = ink.Glyph(codePoint);
        Glyph(codePoint, x - (box.Left + box.Right) / 2 * scale, y, scale);
    }

    public void Line(double x1, double y1, double x2, double y2, double thickness, LineStyle style = LineStyle.Solid)
    {
        drawn.Add(new Line(new Point(x1, y1), new Point(x2, y2), thickness, style));
        var half = thickness / 2;
        if (x1 == x2 || y1 == y2)
        {
            skyline.Add(new Box(Math.Min(x1, x2), Math.Min(y1, y2) - half, Math.Max(x1, x2), Math.Max(y1, y2) + half));
        }
        else
        {
            Sloped(x1, y1, x2, y2, half);
        }
    }

    public void Text(string value, double x, double y, double size, Face face, Anchor anchor = Anchor.Start)
    {
        if (value.Length == 0) return;
        var mark = new Text(value, new Point(x, y), size, face, anchor);
        drawn.Add(mark);
        var box = ink.Text(mark);
        skyline.Add(box);
        Signs.Add(box);
    }

    public void Beam(double x1, double y1, double x2, double y2, double thickness)
    {
        var half = thickness / 2;
        drawn.Add(new Polygon([new(x1, y1 - half), new(x2, y2 - half), new(x2, y2 + half), new(x1, y1 + half)]));
        Sloped(x1, y1, x2, y2, half);
    }

    public void Polygon(params ReadOnlySpan<Point> points)
    {
        drawn.Add(new Polygon([.. points]));
        double left = double.MaxValue, top = double.MaxValue, right = double.MinValue, bottom = double.MinValue;
        foreach (var point in points)
        {
            left = Math.Min(left, point.X);
            top = Math.Min(top, point.Y);
            right = Math.Max(right, point.X);
            bottom = Math.Max(bottom, point.Y);
        }
        skyline.Add(new Box(left, top, right, bottom));
    }

    public void Curve(Point from, Point control1, Point control2, Point to, double thickness)
    {
        drawn.Add(new Curve(from, control1, control2, to, thickness));
        Along(from, control1, control2, to, thickness / 2);
    }

    /// <summary>A tie or slur whose middle stands off by a height: negative upwards.</summary>
    public void Slur(double x1, double y1, double x2, double y2, double height)
    {
        var reach = SignMap.SlurReach(x1, x2);
        Point from = new(x1, y1), to = new(x2, y2);
        Point control1 = new(x1 + reach, y1 + height * 4 / 3), control2 = new(x2 - reach, y2 + height * 4 / 3);
        drawn.Add(new Slur(from, control1, control2, to, ink.TieEnd, ink.TieMiddle));
        Along(from, control1, control2, to, ink.TieMiddle / 2);
    }

    /// <summary>White behind what is drawn next; no ink.</summary>
    public void White(double left, double top, double right, double bottom) => drawn.Add(new Fill(new Box(left, top, right, bottom)));

    private ValueList<Mark> TakeFrom(int start)
    {
        var marks = ValueList.Create<Mark>(CollectionsMarshal.AsSpan(drawn)[start..]);
        drawn.RemoveRange(start, drawn.Count - start);
        return marks;
    }

    private void Sloped(double x1, double y1, double x2, double y2, double half)
    {
        if (x1 > x2) (x1, y1, x2, y2) = (x2, y2, x1, y1);
        var steps = Math.Max(1, (int)Math.Ceiling((x2 - x1) * 2));
        for (var i = 0; i < steps; i++)
        {
            double a = (double)i / steps, b = (i + 1.0) / steps;
            double ya = y1 + (y2 - y1) * a, yb = y1 + (y2 - y1) * b;
            skyline.Add(new Box(x1 + (x2 - x1) * a, Math.Min(ya, yb) - half, x1 + (x2 - x1) * b, Math.Max(ya, yb) + half));
        }
    }

    private void Along(Point a, Point b, Point c, Point d, double half)
    {
        const int Pieces = 8;
        var last = a;
        for (var i = 1; i <= Pieces; i++)
        {
            var t = i / (double)Pieces;
            var u = 1 - t;
            var next = new Point(
                u * u * u * a.X + 3 * u * u * t * b.X + 3 * u * t * t * c.X + t * t * t * d.X,
                u * u * u * a.Y + 3 * u * u * t * b.Y + 3 * u * t * t * c.Y + t * t * t * d.Y);
            skyline.Add(new Box(Math.Min(last.X, next.X), Math.Min(last.Y, next.Y) - half, Math.Max(last.X, next.X), Math.Max(last.Y, next.Y) + half));
            last = next;
        }
    }
}
