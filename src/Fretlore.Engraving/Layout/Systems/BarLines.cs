using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Draws the bar lines of one row: single, double, final, and those with repeat dots.</summary>
/// <param name="pen">The row's pen.</param>
/// <param name="height">From the row's top line to its bottom line.</param>
/// <param name="dots">Where a repeat's two dots stand.</param>
internal sealed class BarLines(Pen pen, double height, (double Upper, double Lower) dots)
{
    public static BarLines OnStaff(Pen pen) => new(pen, HouseStyle.StaffHeight, (1.5, 2.5));

    // In the spaces next to the middle, whether that is a line or a space.
    public static BarLines OnTab(Pen pen, StaffPlan staff)
    {
        var off = staff.StringCount % 2 == 0 ? HouseStyle.TabLineDistance : HouseStyle.TabLineDistance / 2;
        return new BarLines(pen, staff.TabHeight, (staff.TabHeight / 2 - off, staff.TabHeight / 2 + off));
    }

    public void Draw(MeasurePlace place, MeasurePlace? next)
    {
        if (place.Prefix.RepeatX is { } repeatX) StartRepeat(place.Left + repeatX);
        var takesOver = next?.Prefix.RepeatX == 0;
        var bar = place.Measure.LastBar;
        if (bar.RepeatCount > 0) EndRepeat(place.Right);
        else if (bar.EndLine == BarLine.Final || (bar.EndLine == BarLine.Double && takesOver)) Final(place.Right);
        else if (takesOver) return;
        else if (bar.EndLine == BarLine.Double) Double(place.Right);
        else Thin(place.Right - pen.Ink.ThinBar / 2);
    }

    private void StartRepeat(double x)
    {
        Thick(x + pen.Ink.ThickBar / 2);
        var thin = x + pen.Ink.ThickBar + pen.Ink.BarSeparation + pen.Ink.ThinBar / 2;
        Thin(thin);
        Dots(thin + pen.Ink.ThinBar / 2 + 0.25 + pen.Ink.GlyphWidth(Smufl.RepeatDot) / 2);
    }

    private void EndRepeat(double right)
    {
        Thick(right - pen.Ink.ThickBar / 2);
        var thin = right - pen.Ink.ThickBar - pen.Ink.BarSeparation - pen.Ink.ThinBar / 2;
        Thin(thin);
        Dots(thin - pen.Ink.ThinBar / 2 - 0.25 - pen.Ink.GlyphWidth(Smufl.RepeatDot) / 2);
    }

    private void Final(double right)
    {
        Thick(right - pen.Ink.ThickBar / 2);
        Thin(right - pen.Ink.ThickBar - pen.Ink.BarSeparation - pen.Ink.ThinBar / 2);
    }

    private void Double(double right)
    {
        Thin(right - pen.Ink.ThinBar / 2);
        Thin(right - pen.Ink.BarSeparation - pen.Ink.ThinBar * 1.5);
    }

    private void Thin(double x) => pen.Line(x, 0, x, height, pen.Ink.ThinBar);

    private void Thick(double x) => pen.Line(x, 0, x, height, pen.Ink.ThickBar);

    private void Dots(double x)
    {
        var box = pen.Ink.Glyph(Smufl.RepeatDot);
        var middle = (box.Top + box.Bottom) / 2;
        pen.GlyphCentred(Smufl.RepeatDot, x, dots.Upper - middle);
        pen.GlyphCentred(Smufl.RepeatDot, x, dots.Lower - middle);
    }
}
