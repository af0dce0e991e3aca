using SkiaSharp;

namespace Fretlore.Engraving.Fonts.Subset;

/// <summary>A glyph's outline as TrueType has it: contours of points on the curve and quadratic controls off it, in whole font units, y upwards.</summary>
internal sealed class QuadraticOutline
{
    // Half a unit of a thousandth of an em: as near as whole units can be.
    private const double Tolerance = 0.5;

    private readonly List<List<Node>> contours = [];

    /// <param name="X">In font units.</param>
    /// <param name="Y">In font units, upwards.</param>
    /// <param name="OnCurve">Whether the outline goes through it.</param>
    public readonly record struct Node(int X, int Y, bool OnCurve);

    public IReadOnlyList<IReadOnlyList<Node>> Contours => contours;

    /// <summary>The leftmost point or control; 0 for a glyph without ink.</summary>
    public int Left => contours.SelectMany(contour => contour).Select(node => node.X).DefaultIfEmpty().Min();

    /// <param name="path">The outline with y downwards, in font units; lines, quadratics and cubics.</param>
    public static QuadraticOutline Of(SKPath path)
    {
        var outline = new QuadraticOutline();
        using var iterator = path.CreateRawIterator();
        Span<SKPoint> points = stackalloc SKPoint[4];
        for (var verb = iterator.Next(points); verb != SKPathVerb.Done; verb = iterator.Next(points))
        {
            switch (verb)
            {
                case SKPathVerb.Move: outline.contours.Add([At(points[0], true)]); break;
                case SKPathVerb.Line: outline.Add(points[1], true); break;
                case SKPathVerb.Quad:
                    outline.Add(points[1], false);
                    outline.Add(points[2], true);
                    break;
                case SKPathVerb.Cubic: outline.AddCubic(points[0], points[1], points[2], points[3]); break;
                case SKPathVerb.Close: break;
                default: throw new NotSupportedException($"No font outline has a {verb}.");
            }
        }

        foreach (var contour in outline.contours)
            if (contour.Count > 1 && contour[^1] == contour[0]) contour.RemoveAt(contour.Count - 1);
        outline.contours.RemoveAll(contour => contour.Count < 3);
        return outline;
    }

    /// <summary>Cuts a cubic into as few equal pieces as each may be one quadratic.</summary>
    /// <remarks>The error of the midpoint quadratic of a cubic is √3/36 |p3 - 3 p2 + 3 p1 - p0|, and falls with the cube of the number of pieces.</remarks>
    private void AddCubic(SKPoint p0, SKPoint p1, SKPoint p2, SKPoint p3)
    {
        var bent = Math.Sqrt(Square(p3.X - 3 * p2.X + 3 * p1.X - p0.X) + Square(p3.Y - 3 * p2.Y + 3 * p1.Y - p0.Y));
        var pieces = Math.Max(1, (int)Math.Ceiling(Math.Cbrt(Math.Sqrt(3) / 36 * bent / Tolerance)));
        for (var i = 0; i < pieces; i++)
        {
            var (from, to) = (i / (float)pieces, (i + 1) / (float)pieces);
            var (start, end) = (On(from), On(to));
            var third = (to - from) / 3;
            var (leaving, arriving) = (start + Scaled(Along(from), third), end - Scaled(Along(to), third));
            var control = new SKPoint((3 * (leaving.X + arriving.X) - start.X - end.X) / 4, (3 * (leaving.Y + arriving.Y) - start.Y - end.Y) / 4);
            Add(control, false);
            Add(end, true);
        }

        SKPoint On(float t)
        {
            var s = 1 - t;
            return Scaled(p0, s * s * s) + Scaled(p1, 3 * s * s * t) + Scaled(p2, 3 * s * t * t) + Scaled(p3, t * t * t);
        }

        SKPoint Along(float t)
        {
            var s = 1 - t;
            return Scaled(p1 - p0, 3 * s * s) + Scaled(p2 - p1, 6 * s * t) + Scaled(p3 - p2, 3 * t * t);
        }
    }

    private void Add(SKPoint point, bool onCurve) => contours[^1].Add(At(point, onCurve));

    private static Node At(SKPoint point, bool onCurve) => new((int)MathF.Round(point.X), (int)MathF.Round(-point.Y), onCurve);

    private static SKPoint Scaled(SKPoint point, float by) => new(point.X * by, point.Y * by);

    private static double Square(double value) => value * value;
}
