using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Engraving.Layout.Tab;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws one part's staff through one system; y is 0 on its top line.</summary>
internal sealed class StaffRow(Pen pen, StaffPlan staff, SystemGeometry geometry, NoteTitles? titles)
{
    private readonly VoiceDrawer voices = new(pen, geometry, titles);
    private readonly BarSigns bars = new(pen, HouseStyle.StaffHeight / 2);

    /// <summary>The five lines.</summary>
    public void DrawLines(double right)
    {
        for (var line = 0; line < 5; line++) pen.Line(geometry.Left, line, right, line, pen.Ink.StaffLine);
    }

    public void DrawMeasure(MeasurePlace place)
    {
        DrawPrefix(place.Prefix, place.Measure, place.Left, place == geometry.Measures[0]);
        var part = place.Measure.Parts[staff.Index];
        if (place.Measure.IsMultiRest) bars.DrawMultiRest(place, -1.4);
        else if (part.Source.Repeats > 0) bars.DrawSameBar(place, part.Source.Repeats, staff.Index, geometry);
        else if (part.IsFree) bars.DrawSlashes(place);
        else if (part.IsRest) bars.DrawRest(place);
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
        if (prefix.MeterX is { } meterX) bars.DrawMeter(measure.Bar.Meter, left + meterX);
    }
}
