using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Draws what stands once above a system: bar number, endings, repeat counts, jumps, sections and tempo.</summary>
/// <param name="pen">Draws above the system's first part.</param>
/// <param name="geometry">The system.</param>
/// <param name="top">The part whose words stand with the tempo where they begin with it; null for none.</param>
internal sealed class SystemMarks(Pen pen, SystemGeometry geometry, StaffPlan? top)
{
    // White after a tempo: a bend's amount or other words so near would read on from it.
    private const double TempoClear = 2.5;

    private const double WordSpace = 0.9;

    public void Draw()
    {
        DrawBarNumber();
        DrawGroupings();
        DrawRepeatCounts();
        DrawEndings();
        new JumpSigns(pen, geometry).Draw();
        DrawSectionsAndTempos();
    }

    private void DrawBarNumber()
    {
        var bar = geometry.Measures[0].Measure.Bar;
        if (bar.Number <= 1 || bar.IsPickup) return;
        var text = bar.Number.ToString(CultureInfo.InvariantCulture);
        var width = pen.Ink.TextWidth(text, Face.SerifItalic, HouseStyle.SmallSize);
        // Clear of the bracket's tip as well as the clef.
        var y = Math.Min(-1.75, pen.Skyline.Top(geometry.Left, geometry.Left + width) - 0.4);
        pen.Text(text, geometry.Left, y, HouseStyle.SmallSize, Face.SerifItalic);
    }

    private void DrawGroupings()
    {
        foreach (var place in geometry.Measures)
        {
            if (place.Prefix.MeterX is not { } meterX || Prefix.GroupingOf(place.Measure.Bar.Meter) is not { } grouping) continue;
            var x = place.Left + meterX;
            var half = pen.Ink.TextWidth(grouping, Face.SansBold, HouseStyle.SmallSize) / 2;
            var y = Math.Min(-0.8, pen.Skyline.Top(x - half, x + half) - HouseStyle.SkylineGap);
            pen.Text(grouping, x, y, HouseStyle.SmallSize, Face.SansBold, Anchor.Middle);
        }
    }

    private void DrawRepeatCounts()
    {
        foreach (var place in geometry.Measures)
        {
            if (place.Measure.LastBar.RepeatCount <= 2) continue;
            var text = "\u00D7" + place.Measure.LastBar.RepeatCount.ToString(CultureInfo.InvariantCulture);
            var width = pen.Ink.TextWidth(text, Face.SansBold, HouseStyle.WordSize);
            var y = Math.Min(-0.8, pen.Skyline.Top(place.Right - width, place.Right) - HouseStyle.SkylineGap);
            pen.Text(text, place.Right, y, HouseStyle.WordSize, Face.SansBold, Anchor.End);
        }
    }

    // A bracket from the ending's first bar to its last, or to the system's end when it goes on in the next.
    private void DrawEndings()
    {
        var row = new AlignedRow(pen);
        for (var i = 0; i < geometry.Measures.Length; i++)
        {
            var place = geometry.Measures[i];
            if (place.Measure.Bar.EndingPasses.Count == 0 || (i > 0 && !place.Measure.Bar.StartsEnding)) continue;
            var last = i;
            while (!geometry.Measures[last].Measure.LastBar.EndsEnding && last + 1 < geometry.Measures.Length
                && geometry.Measures[last + 1].Measure.Bar.EndingPasses == place.Measure.Bar.EndingPasses && !geometry.Measures[last + 1].Measure.Bar.StartsEnding)
            {
                last++;
            }
            var end = geometry.Measures[last];
            var left = i == 0 ? place.Left + place.Prefix.Width : place.Left + pen.Ink.ThinBar / 2;
            var right = end.Right - 0.25;
            var begins = place.Measure.Bar.StartsEnding;
            var closes = end.Measure.LastBar.EndsEnding && end.Measure.LastBar.RepeatCount > 0;
            var label = string.Join(' ', place.Measure.Bar.EndingPasses.Items.Select(p => p.ToString(CultureInfo.InvariantCulture) + "."));
            row.Add(left, right, y =>
            {
                var top = y - 1.9;
                pen.Line(left, top, right, top, pen.Ink.ThinBar);
                if (begins) pen.Line(left, top, left, y, pen.Ink.ThinBar);
                if (closes) pen.Line(right, top, right, y, pen.Ink.ThinBar);
                pen.Text(begins ? label : "(" + label + ")", left + 0.5, y - 0.2, HouseStyle.SmallSize, Face.SansBold);
            });
        }
        row.DrawAbove(0, 0.8);
    }

    private void DrawSectionsAndTempos()
    {
        var rows = new StackedRows(pen);
        foreach (var place in geometry.Measures)
        {
            var x = place == geometry.Measures[0] ? place.Left : place.Left + 0.2;
            if (place.Measure.Section is { Length: > 0 } section)
            {
                var lines = LineWrap.Of(pen.Ink, section, Face.SerifBold, HouseStyle.SectionSize, Math.Max(HouseStyle.LeastTextWidth, geometry.Right - geometry.Left) - 1);
                var width = lines.Max(l => pen.Ink.TextWidth(l, Face.SerifBold, HouseStyle.SectionSize)) + 1;
                var at = Math.Max(geometry.Left, Math.Min(x, geometry.Right - width));
                rows.Add(at, at + width, y => DrawSection(lines, at, width, y));
                x = at + width + 1;
            }
            if (place.Measure.Bar.FeelChange is { } feel) x = AddFeel(rows, feel, x);
            foreach (var tempo in place.Measure.Bar.Tempos)
            {
                var at = tempo.At.IsZero ? Math.Max(x, place == geometry.Measures[0] ? place.Left : place.Music) : XAt(place, tempo.At);
                AddTempo(rows, tempo.Tempo, at, top is null ? null : TempoWords.At(pen.Ink, place.Measure.Parts[top.Index], tempo.At));
            }
        }
        rows.DrawAbove(0.55, 1.8);
    }

    private void DrawSection(List<string> lines, double x, double width, double y)
    {
        var cap = pen.Ink.CapHeight(Face.SerifBold, HouseStyle.SectionSize);
        double top = y - cap - 0.5 - (lines.Count - 1) * HouseStyle.SectionSize * 1.2, bottom = y + 0.5;
        pen.Line(x, top, x + width, top, pen.Ink.ThinBar);
        pen.Line(x, bottom, x + width, bottom, pen.Ink.ThinBar);
        pen.Line(x, top, x, bottom, pen.Ink.ThinBar);
        pen.Line(x + width, top, x + width, bottom, pen.Ink.ThinBar);
        for (var i = 0; i < lines.Count; i++)
        {
            pen.Text(lines[i], x + width / 2, y - (lines.Count - 1 - i) * HouseStyle.SectionSize * 1.2, HouseStyle.SectionSize, Face.SerifBold, Anchor.Middle);
        }
    }

    private double AddFeel(StackedRows rows, Feel feel, double x)
    {
        var text = feel.Swung switch
        {
            null => "Straight",
            ValueBase.Sixteenth => "Swung sixteenths",
            _ => "Swung eighths",
        };
        var width = pen.Ink.TextWidth(text, Face.SerifBold, HouseStyle.TempoSize);
        rows.Add(x, x + width, y => pen.Text(text, x, y, HouseStyle.TempoSize, Face.SerifBold));
        return x + width + 1;
    }

    private void AddTempo(StackedRows rows, Tempo tempo, double x, TempoWords? words)
    {
        const double Scale = 0.62;
        var glyph = Signs.TempoNoteOf(tempo.Beat.Base);
        var equals = string.Create(CultureInfo.InvariantCulture, $"= {tempo.PerMinute:0.##}");
        var note = pen.Ink.GlyphWidth(glyph) * Scale + tempo.Beat.Dots * 0.6 + 0.5;
        var before = words is { } said ? said.Width + WordSpace : 0;
        var width = before + note + pen.Ink.TextWidth(equals, Face.SerifBold, HouseStyle.TempoSize);
        x = Math.Max(geometry.Left, Math.Min(x, geometry.LinesRight - width));
        var (start, sign) = (x, x + before);
        rows.Add(start, start + width + TempoClear, y =>
        {
            if (words is { Text: var text }) pen.Text(text, start, y, HouseStyle.WordSize, Face.SerifItalic);
            pen.Glyph(glyph, sign, y - 0.15, Scale);
            for (var dot = 0; dot < tempo.Beat.Dots; dot++)
            {
                pen.Glyph(Smufl.MetAugmentationDot, sign + pen.Ink.GlyphWidth(glyph) * Scale + 0.2 + dot * 0.5, y - 0.15, Scale);
            }
            pen.Text(equals, sign + note, y, HouseStyle.TempoSize, Face.SerifBold);
        });
    }

    private static double XAt(MeasurePlace place, Beats at)
    {
        var columns = place.Measure.Columns;
        for (var c = columns.Length - 1; c >= 0; c--)
        {
            if (columns[c].Time <= at) return place.Columns[c];
        }
        return place.Music;
    }
}
