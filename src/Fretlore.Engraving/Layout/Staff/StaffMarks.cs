using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws what stands above and below one staff of a system: chord symbols and words above, dynamics below.</summary>
internal sealed class StaffMarks(Pen pen, StaffPlan staff, SystemGeometry geometry, ChordRows chords)
{
    public void Draw()
    {
        DrawDynamics();
        DrawChords();
        DrawWords();
    }

    private void DrawChords()
    {
        var row = new AlignedRow(pen);
        foreach (var place in geometry.Measures)
        {
            foreach (var (column, label) in chords.In(staff.Index, place.Measure))
            {
                var x = place.Columns[column];
                row.Add(x, x + label.Width, y => label.Draw(pen, x, y));
            }
        }
        row.DrawAbove(0.15, 1.5);
    }

    private void DrawWords()
    {
        foreach (var place in geometry.Measures)
        {
            var part = place.Measure.Parts[staff.Index];
            if (part.Source.RoadMap is { } map && StartsRoadMap(place, map)) DrawWord("free: " + map, place.Music);
            foreach (var voice in part.Voices)
            {
                foreach (var slot in voice.Slots)
                {
                    if (slot.Event.Words is { Length: > 0 } words) DrawWord(words, geometry.X(slot));
                }
            }
        }
    }

    private bool StartsRoadMap(MeasurePlace place, string map) => !geometry.Has(place.Measure.Index - 1)
        || geometry[place.Measure.Index - 1].Measure.Parts[staff.Index].Source.RoadMap != map;

    private void DrawWord(string words, double x)
    {
        var width = pen.Ink.TextWidth(words, Face.SerifItalic, HouseStyle.WordSize);
        // Words at the end of a system move left rather than past the margin.
        x = Math.Max(geometry.Left, Math.Min(x, geometry.Right - width));
        var y = Math.Min(-1, pen.Skyline.Top(x, x + width) - HouseStyle.SkylineGap - 0.5);
        pen.Text(words, x, y, HouseStyle.WordSize, Face.SerifItalic);
    }

    private void DrawDynamics()
    {
        var row = new AlignedRow(pen);
        foreach (var place in geometry.Measures)
        {
            foreach (var voice in place.Measure.Parts[staff.Index].Voices)
            {
                foreach (var slot in voice.Slots)
                {
                    if (slot.Event.Dynamic is not { } dynamic) continue;
                    var glyph = Signs.DynamicOf(dynamic);
                    var x = geometry.X(slot) + 0.6;
                    var half = pen.Ink.GlyphWidth(glyph) / 2;
                    row.Add(x - half, x + half, y => pen.GlyphCentred(glyph, x, y));
                }
            }
        }
        row.DrawBelow(1.2, 6.2);
    }
}
