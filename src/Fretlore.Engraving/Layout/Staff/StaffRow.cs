using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws one part's staff through one system; y is 0 on its top line.</summary>
internal sealed class StaffRow(Pen pen, StaffPlan staff, SystemGeometry geometry)
{
    private readonly VoiceDrawer voices = new(pen, geometry);

    /// <summary>The five lines.</summary>
    public void DrawLines(double right)
    {
        for (var line = 0; line < 5; line++) pen.Line(geometry.Left, line, right, line, pen.Ink.StaffLine);
    }

    public void DrawMeasure(MeasurePlace place)
    {
        DrawPrefix(place.Prefix, place.Measure, place.Left, place == geometry.Measures[0]);
        var part = place.Measure.Parts[staff.Index];
        if (place.Measure.IsMultiRest) DrawMultiRest(place);
        else if (part.Source.Repeats > 0) DrawSameBar(place, part.Source.Repeats);
        else if (part.IsFree) DrawSlashes(place);
        else if (part.IsRest) DrawBarRest(place);
        else voices.Draw(place, part);
    }

    /// <summary>Clef, key signature and metre.</summary>
    public void DrawPrefix(Prefix prefix, Measure measure, double left, bool atStart)
    {
        if (prefix.ClefX is { } clefX) pen.Glyph(staff.Clef.CodePoint, left + clefX, staff.Clef.Line);
        if (prefix.KeyX is { } keyX)
        {
            var x = left + keyX;
            foreach (var (glyph, position) in Prefix.KeySigns(measure, atStart))
            {
                pen.Glyph(glyph, x, 4 - (position - staff.Clef.SignatureShift) / 2.0);
                x += Prefix.AccidentalPitch;
            }
        }
        if (prefix.MeterX is { } meterX)
        {
            var (upper, lower) = Prefix.MeterGlyphs(measure.Bar.Meter);
            DrawCentred(upper, left + meterX, 1);
            DrawCentred(lower, left + meterX, 3);
        }
    }

    private void DrawCentred(System.Collections.Immutable.ImmutableArray<int> glyphs, double middle, double y)
    {
        var x = middle - Prefix.RowWidth(pen.Ink, glyphs) / 2;
        foreach (var glyph in glyphs)
        {
            pen.Glyph(glyph, x, y);
            x += pen.Ink.Music.AdvanceOf(glyph);
        }
    }

    // A whole rest in the middle, whatever the metre; a pickup shows the rest of its own length where one value has it.
    private void DrawBarRest(MeasurePlace place)
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
        pen.GlyphCentred(glyph, (place.Left + place.Prefix.Width + place.Right) / 2, y);
    }

    private void DrawMultiRest(MeasurePlace place)
    {
        double left = place.Music + 0.2, right = place.Right - 1.1;
        pen.Beam(left, 2, right, 2, 0.9);
        pen.Line(left, 1, left, 3, pen.Ink.ThinBar);
        pen.Line(right, 1, right, 3, pen.Ink.ThinBar);
        var digits = place.Measure.BarCount.ToString(System.Globalization.CultureInfo.InvariantCulture);
        DrawCentred([.. digits.Select(d => Smufl.TimeSig0 + (d - '0'))], (left + right) / 2, -1.4);
    }

    private void DrawSameBar(MeasurePlace place, int count)
    {
        var (glyph, x) = SameBarSign.At(place, count, staff.Index, geometry);
        if (glyph != 0) pen.GlyphCentred(glyph, x, 2);
    }

    private void DrawSlashes(MeasurePlace place)
    {
        var times = MeasureParts.SlashTimes(place.Measure.Bar);
        for (var c = 0; c < place.Columns.Length; c++)
        {
            if (times.Contains(place.Measure.Columns[c].Time)) pen.Glyph(Smufl.NoteheadSlashHorizontalEnds, place.Columns[c], 2);
        }
    }
}
