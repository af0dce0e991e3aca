using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Music;

namespace Fretlore.Lesson.Diagrams;

/// <summary>Draws part of a neck as marks for paper and film: string 1 on top, the nut on the left, as tablature is read. Roots are squares, other notes circles.</summary>
/// <param name="StringPitch">Between two strings; all else follows from it.</param>
internal sealed record NeckMarks(double StringPitch)
{
    // A circle of four cubic curves (the usual approximation, off by less than 0.03 % of the radius).
    private const double Kappa = 0.5523;

    private double FretPitch => StringPitch * 1.5;

    private double Radius => StringPitch * 0.42;

    private double Head => StringPitch * 1.4;

    public double WidthOf(NeckBox box) => Head + box.Frets * FretPitch + StringPitch * 0.6;

    public double HeightOf(NeckBox box) => (box.StringCount - 1) * StringPitch + StringPitch * 2.2;

    /// <param name="box">What to draw.</param>
    /// <param name="left">Left edge of everything.</param>
    /// <param name="top">Top edge.</param>
    public IEnumerable<Mark> Draw(NeckBox box, double left, double top)
    {
        double nut = left + Head, first = top + StringPitch * 0.6, bottom = first + (box.StringCount - 1) * StringPitch, thin = StringPitch * 0.05;
        for (var s = 0; s < box.StringCount; s++) yield return new Line(new(nut, first + s * StringPitch), new(nut + box.Frets * FretPitch, first + s * StringPitch), thin);
        for (var f = 0; f <= box.Frets; f++)
        {
            var thickness = f == 0 && box.First == 1 ? thin * 5 : thin;
            yield return new Line(new(nut + f * FretPitch, first - thin / 2), new(nut + f * FretPitch, bottom + thin / 2), thickness);
        }
        for (var f = 0; f < box.Frets; f++)
        {
            var number = box.First + f;
            if (f > 0 && number is not (3 or 5 or 7 or 9 or 12 or 15 or 17 or 19 or 21 or 24)) continue;
            if (f == 0 && box.First == 1) continue;
            yield return Number(number, nut + (f + 0.5) * FretPitch, bottom + StringPitch * 1.25);
        }
        if (box.Bar is var (low, high, at))
        {
            var x = nut + (at - box.First + 0.5) * FretPitch;
            yield return new Line(new(x, first + (high - 1.35) * StringPitch), new(x, first + (low - 0.65) * StringPitch), StringPitch * 0.3);
        }
        foreach (var muted in box.Muted)
        {
            var (x, y, arm) = (nut - StringPitch * 0.75, first + (muted.Value - 1) * StringPitch, StringPitch * 0.22);
            yield return new Line(new(x - arm, y - arm), new(x + arm, y + arm), thin * 2);
            yield return new Line(new(x - arm, y + arm), new(x + arm, y - arm), thin * 2);
        }
        foreach (var dot in box.Dots)
        {
            var y = first + (dot.String.Value - 1) * StringPitch;
            var x = dot.Fret.IsOpen ? nut - StringPitch * 0.75 : nut + (dot.Fret.Number - box.First + 0.5) * FretPitch;
            foreach (var mark in Dot(dot, x, y)) yield return mark;
        }
    }

    private Text Number(int number, double x, double y) =>
        new(number.ToString(CultureInfo.InvariantCulture), new(x, y), StringPitch * 0.75, Face.Sans, Anchor.Middle);

    private IEnumerable<Mark> Dot(NeckDot dot, double x, double y)
    {
        var r = dot.Fret.IsOpen && dot.Label.Length == 0 ? Radius * 0.65 : Radius;
        var thick = StringPitch * 0.09;
        // White inside, where a string would cross the label.
        yield return new Fill(new Box(x - r * 0.8, y - r * 0.8, x + r * 0.8, y + r * 0.8));
        if (dot.IsRoot)
        {
            yield return new Fill(new Box(x - r, y - r, x + r, y + r));
            foreach (var line in Square(x, y, r, thick * 1.6)) yield return line;
        }
        else if (dot.Label.Length == 0 && !dot.Fret.IsOpen)
        {
            yield return Disc(x, y, r);
        }
        else
        {
            foreach (var curve in Circle(x, y, r, thick)) yield return curve;
        }
        if (dot.Label.Length > 0)
        {
            var size = StringPitch * (dot.Label.Length > 1 ? 0.5 : 0.6);
            yield return new Text(dot.Label, new(x, y + size * 0.36), size, Face.SansBold, Anchor.Middle);
        }
    }

    private static IEnumerable<Mark> Square(double x, double y, double r, double thick)
    {
        yield return new Line(new(x - r - thick / 2, y - r), new(x + r + thick / 2, y - r), thick);
        yield return new Line(new(x - r - thick / 2, y + r), new(x + r + thick / 2, y + r), thick);
        yield return new Line(new(x - r, y - r), new(x - r, y + r), thick);
        yield return new Line(new(x + r, y - r), new(x + r, y + r), thick);
    }

    private static IEnumerable<Mark> Circle(double x, double y, double r, double thick)
    {
        var k = r * Kappa;
        yield return new Curve(new(x + r, y), new(x + r, y + k), new(x + k, y + r), new(x, y + r), thick);
        yield return new Curve(new(x, y + r), new(x - k, y + r), new(x - r, y + k), new(x - r, y), thick);
        yield return new Curve(new(x - r, y), new(x - r, y - k), new(x - k, y - r), new(x, y - r), thick);
        yield return new Curve(new(x, y - r), new(x + k, y - r), new(x + r, y - k), new(x + r, y), thick);
    }

    private static Polygon Disc(double x, double y, double r)
    {
        const int Corners = 32;
        return new Polygon(Enumerable.Range(0, Corners).Select(i => new Point(x + r * Math.Cos(2 * Math.PI * i / Corners), y + r * Math.Sin(2 * Math.PI * i / Corners))).ToValueList());
    }
}
