using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Pages;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws what stands above and below one staff of a system: chord symbols and words above, dynamics below.</summary>
/// <param name="pen">Draws it.</param>
/// <param name="staff">The staff.</param>
/// <param name="geometry">The system.</param>
/// <param name="chords">Chord symbols.</param>
/// <param name="joinsTempo">Whether its words stand with the tempo where they begin with it.</param>
internal sealed class StaffMarks(Pen pen, StaffPlan staff, SystemGeometry geometry, ChordRows chords, bool joinsTempo)
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
            if (part.NewCapo is { } capo) DrawWord(TuningText.Of(capo), place.Music);
            foreach (var voice in part.Voices)
            {
                foreach (var slot in voice.Slots)
                {
                    if (slot.Event.Words is { Length: > 0 } words && !StandsWithTempo(place.Measure, part, slot, words)) DrawWord(words, geometry.X(slot));
                }
            }
        }
    }

    private bool StandsWithTempo(Measure measure, MeasurePart part, Slot slot, string words) => joinsTempo
        && measure.Bar.Tempos.Any(tempo => tempo.At == slot.Event.Start) && TempoWords.At(pen.Ink, part, slot.Event.Start)?.Text == words;

    private void DrawWord(string words, double x)
    {
        var lines = LineWrap.Of(pen.Ink, words, Face.SerifItalic, HouseStyle.WordSize, Math.Max(HouseStyle.LeastTextWidth, geometry.Right - geometry.Left));
        if (lines.Count == 0) return;
        var width = lines.Max(l => pen.Ink.TextWidth(l, Face.SerifItalic, HouseStyle.WordSize));
        // Words at the end of a system move left rather than past the margin.
        x = Math.Max(geometry.Left, Math.Min(x, geometry.Right - width));
        var y = Math.Min(-1, pen.Skyline.Top(x, x + width) - HouseStyle.SkylineGap - 0.5);
        y -= (lines.Count - 1) * HouseStyle.WordSize * 1.2;
        foreach (var line in lines)
        {
            pen.Text(line, x, y, HouseStyle.WordSize, Face.SerifItalic);
            y += HouseStyle.WordSize * 1.2;
        }
    }

    private void DrawDynamics()
    {
        var row = new AlignedRow(pen);
        var taken = new List<(double Left, double Right)>();
        foreach (var place in geometry.Measures)
        {
            foreach (var voice in place.Measure.Parts[staff.Index].Voices)
            {
                foreach (var slot in voice.Slots)
                {
                    if (slot.Event.Dynamic is { } dynamic) AddDynamic(row, Signs.DynamicOf(dynamic), geometry.X(slot) - slot.Shift + 0.6, taken);
                }
            }
        }
        AddHairpins(row, Spans.Crescendo, taken);
        AddHairpins(row, Spans.Diminuendo, taken);
        row.DrawBelow(1.8, staff.TopHeight + 2.2);
    }

    private void AddDynamic(AlignedRow row, int glyph, double x, List<(double Left, double Right)> taken)
    {
        var half = pen.Ink.GlyphWidth(glyph) / 2;
        // Voices that begin together have one between them.
        if (!row.HasRoom(x - half, x + half)) return;
        row.Add(x - half, x + half, y => pen.GlyphCentred(glyph, x, y));
        taken.Add((x - half, x + half));
    }

    // Two lines that open or close, from the first note of the span to the one after it, or to the bar line; dynamics within it divide it.
    private void AddHairpins(AlignedRow row, Spans kind, List<(double Left, double Right)> taken)
    {
        const double Gap = 0.5;
        const double Shortest = 1;
        var slots = new List<Slot>();
        foreach (var place in geometry.Measures)
        {
            if (place.Measure.Parts[staff.Index].Voices is [var voice, ..]) slots.AddRange(voice.Slots);
        }
        for (var first = 0; first < slots.Count; first++)
        {
            if (!slots[first].Event.Spans.HasFlag(kind)) continue;
            var last = first;
            while (last + 1 < slots.Count && slots[last + 1].Event.Spans.HasFlag(kind)) last++;
            var left = geometry.X(slots[first]);
            var right = last + 1 < slots.Count ? geometry.X(slots[last + 1]) - 0.8 : geometry.Right - 0.5;
            first = last;
            foreach (var (from, to) in taken.OrderBy(t => t.Left).Append((right + Gap, double.MaxValue)))
            {
                if (to < left) continue;
                var end = Math.Min(right, from - Gap);
                if (end - left >= Shortest) AddHairpin(row, kind, left, end);
                left = Math.Max(left, to + Gap);
            }
        }
    }

    private void AddHairpin(AlignedRow row, Spans kind, double left, double right)
    {
        var (narrow, wide) = kind == Spans.Crescendo ? (left, right) : (right, left);
        row.Add(left, right, y =>
        {
            var middle = y - 0.35;
            pen.Line(narrow, middle, wide, middle - 0.6, pen.Ink.Hairline);
            pen.Line(narrow, middle, wide, middle + 0.6, pen.Ink.Hairline);
        });
    }
}
