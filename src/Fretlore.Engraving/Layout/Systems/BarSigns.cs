using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Draws what fills a whole bar of a row, or stands before it, around the row's middle: metre, rests, slashes.</summary>
/// <param name="pen">The row's pen.</param>
/// <param name="middle">The row's middle, below its top line.</param>
internal sealed class BarSigns(Pen pen, double middle)
{
    public void DrawMeter(Meter meter, double x)
    {
        var (upper, lower) = Prefix.MeterGlyphs(meter);
        DrawCentred(upper, x, middle - 1);
        DrawCentred(lower, x, middle + 1);
    }

    /// <summary>A whole rest in the middle, whatever the metre; a pickup shows the rest of its own length where one value has it.</summary>
    public void DrawRest(MeasurePlace place)
    {
        var bar = place.Measure.Bar;
        var value = ValueBase.Whole;
        if (bar.IsPickup)
        {
            foreach (var candidate in Enum.GetValues<ValueBase>())
            {
                if (new NoteValue(candidate).Length == bar.Length) value = candidate;
            }
        }
        var (glyph, y) = Signs.RestOf(value);
        pen.GlyphCentred(glyph, (place.Left + place.Prefix.Width + place.Right) / 2, y + middle - 2);
    }

    public void DrawMultiRest(MeasurePlace place, double countAt)
    {
        double left = place.Music + 0.2, right = place.Right - (place.Measure.LastBar.RepeatCount > 0 ? Prefix.RepeatWidth(pen.Ink) + 0.4 : 1.1);
        pen.Beam(left, middle, right, middle, 0.9);
        pen.Line(left, middle - 1, left, middle + 1, pen.Ink.ThinBar);
        pen.Line(right, middle - 1, right, middle + 1, pen.Ink.ThinBar);
        var digits = place.Measure.BarCount.ToString(CultureInfo.InvariantCulture);
        DrawCentred([.. digits.Select(d => Smufl.TimeSig0 + (d - '0'))], (left + right) / 2, countAt);
    }

    public void DrawSameBar(MeasurePlace place, int count, int staff, SystemGeometry geometry)
    {
        var (glyph, x) = SameBarSign.At(place, count, staff, geometry);
        if (glyph != 0) pen.GlyphCentred(glyph, x, middle);
    }

    public void DrawSlashes(MeasurePlace place)
    {
        var times = MeasureParts.SlashTimes(place.Measure.Bar);
        for (var c = 0; c < place.Columns.Length; c++)
        {
            if (times.Contains(place.Measure.Columns[c].Time)) pen.Glyph(Smufl.NoteheadSlashHorizontalEnds, place.Columns[c], middle);
        }
    }

    private void DrawCentred(ImmutableArray<int> glyphs, double centre, double y)
    {
        var x = centre - Prefix.RowWidth(pen.Ink, glyphs) / 2;
        foreach (var glyph in glyphs)
        {
            pen.Glyph(glyph, x, y);
            x += pen.Ink.Music.AdvanceOf(glyph);
        }
    }
}
