using Fretlore.Engraving.Drawing;
using SkiaSharp;

namespace Fretlore.Engraving.Output;

/// <summary>Outlines written as SVG path data with at most three decimals.</summary>
internal static class SvgPathData
{
    public static string Of(SKPath path)
    {
        var data = new SvgText();
        using var iterator = path.CreateRawIterator();
        Span<SKPoint> points = stackalloc SKPoint[4];
        for (var verb = iterator.Next(points); verb != SKPathVerb.Done; verb = iterator.Next(points))
        {
            switch (verb)
            {
                case SKPathVerb.Move: data.Append('M').Place(From(points[0])); break;
                case SKPathVerb.Line: data.Append('L').Place(From(points[1])); break;
                case SKPathVerb.Quad: data.Append('Q').Place(From(points[1])).Append(' ').Place(From(points[2])); break;
                case SKPathVerb.Cubic:
                    data.Append('C').Place(From(points[1])).Append(' ').Place(From(points[2])).Append(' ').Place(From(points[3]));
                    break;
                case SKPathVerb.Close: data.Append('Z'); break;
                default: throw new NotSupportedException($"No font outline has a {verb}.");
            }
        }

        return data.ToString();
    }

    private static Point From(SKPoint point) => new(point.X, point.Y);
}
