using System.Globalization;
using System.Text.RegularExpressions;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.RoadMaps;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>Draws one part's tablature through one system; y is 0 on the highest string's line.</summary>
internal sealed partial class TabRow(Pen pen, StaffPlan staff, SystemGeometry geometry, Song song, NoteTitles titles)
{
    private readonly BarSigns bars = new(pen, staff.TabHeight / 2);

    /// <summary>How far below the top line a string's line is.</summary>
    public static double LineOf(Note note) => (note.String.Value - 1) * HouseStyle.TabLineDistance;

    public void DrawLines(double right)
    {
        for (var line = 0; line < staff.StringCount; line++)
        {
            var y = line * HouseStyle.TabLineDistance;
            pen.Line(geometry.Left, y, right, y, pen.Ink.StaffLine);
        }
    }

    /// <summary>The clef of the tablature and its scale: it fills most of the lines, but keeps near one size whatever their number.</summary>
    public static (int Glyph, double Scale) ClefOf(Ink ink, StaffPlan staff)
    {
        var glyph = staff.StringCount <= 5 ? Smufl.FourStringTabClef : Smufl.SixStringTabClef;
        var box = ink.Glyph(glyph);
        return (glyph, Math.Clamp(staff.TabHeight * 0.82, 4.1, 7) / (box.Bottom - box.Top));
    }

    public void DrawMeasure(MeasurePlace place)
    {
        if (place.Prefix.ClefX is { } clefX)
        {
            var (glyph, scale) = ClefOf(pen.Ink, staff);
            var box = pen.Ink.Glyph(glyph);
            pen.Glyph(glyph, place.Left + clefX, staff.TabHeight / 2 - (box.Top + box.Bottom) / 2 * scale, scale);
        }
        var part = place.Measure.Parts[staff.Index];
        if (part.Source.Repeats > 0) bars.DrawSameBar(place, part.Source.Repeats, staff.Index, geometry);
        if (!staff.ShowsStaff) DrawWithoutStaff(place, part);
        foreach (var voice in part.Voices)
        {
            foreach (var slot in voice.Slots)
            {
                var x = geometry.X(slot) - slot.Shift;
                DrawGraces(slot, geometry.X(slot));
                foreach (var head in slot.Heads) DrawNumber(head.Note, FretLabels.Of(head.Note, IsResumed(slot)), x + ColumnInk.Centre, 1);
                if (slot.Event.Roll != Roll.None && !slot.IsRest) DrawRoll(part, slot, x);
            }
        }
    }

    public void DrawMeter(Prefix prefix, Measure measure, double left)
    {
        if (prefix.MeterX is { } meterX) bars.DrawMeter(measure.Bar.Meter, left + meterX);
    }

    // What a staff above would have shown.
    private void DrawWithoutStaff(MeasurePlace place, MeasurePart part)
    {
        DrawMeter(place.Prefix, place.Measure, place.Left);
        if (place.Measure.IsMultiRest) bars.DrawMultiRest(place, -1.6);
        else if (part.IsRest) bars.DrawRest(place);
        else if (part.IsFree && !ShowsNeck(place.Measure)) bars.DrawSlashes(place);
        else new TabRhythm(pen, staff, geometry).Draw(place, part);
    }

    private bool ShowsNeck(Measure measure) => RoadMapStretch.At(song, staff, measure) is { } stretch && RoadMapRow.RegionIn(stretch, staff, measure) is not null;

    /// <summary>Half the width of what stands on the line for a note.</summary>
    public double HalfWidth(PlacedNote note) => Math.Max(0.35,
        pen.Ink.TextWidth(FretLabels.Of(note.Note, IsResumed(note.Slot)), Face.Sans, HouseStyle.FretSize * (note.IsGrace ? 0.75 : 1)) / 2);

    /// <summary>The middle of a note's number.</summary>
    public double Middle(PlacedNote note) => note.IsGrace
        ? MiddleOfGrace(note.Slot, note.Head, geometry.X(note.Slot))
        : geometry.X(note.Slot) - note.Slot.Shift + ColumnInk.Centre;

    // A held note is shown again, in brackets, where a system begins: the reader cannot see where it came from.
    // Without a staff every held note is.
    private bool IsResumed(Slot slot) => !staff.ShowsStaff || slot.Column == 0 && slot.Measure == geometry.Measures[0].Measure.Index;

    private void DrawGraces(Slot slot, double x)
    {
        for (var i = 0; i < slot.Graces.Length; i++)
        {
            var note = slot.Graces[i].Note;
            DrawNumber(note, FretLabels.Of(note), MiddleOfGrace(slot, i, x), 0.75);
        }
    }

    // Further left where the main note's number is wide.
    private double MiddleOfGrace(Slot slot, int grace, double x)
    {
        const double UsualHalf = 0.95;
        var half = slot.Heads.Max(h => pen.Ink.TextWidth(FretLabels.Of(h.Note, IsResumed(slot)), Face.Sans, HouseStyle.FretSize)) / 2;
        return GraceDrawer.XOf(slot, grace, x) + ColumnInk.Centre * HouseStyle.GraceScale - Math.Max(0, half - UsualHalf);
    }

    private void DrawNumber(Note note, string label, double middle, double scale)
    {
        if (label.Length == 0) return;
        var size = HouseStyle.FretSize * scale;
        var y = LineOf(note);
        var half = pen.Ink.TextWidth(label, Face.Sans, size) / 2;
        var height = pen.Ink.DigitHeight(Face.Sans, size);
        pen.Open();
        pen.White(middle - half - 0.12, y - height / 2 - 0.1, middle + half + 0.12, y + height / 2 + 0.1);
        if (label.Contains('(', StringComparison.Ordinal)) DrawBracketed(label, middle, y, size, height);
        else pen.Text(label, middle, y + height / 2, size, Face.Sans, Anchor.Middle);
        pen.Close(string.Create(CultureInfo.InvariantCulture, $"note-{note.Id.Index}"), titles.Of(note));
    }

    // Brackets no higher than the digits, so that those of the next string have room.
    private void DrawBracketed(string label, double middle, double y, double size, double height)
    {
        const double Smaller = 0.74;
        const double Gap = 0.03;
        var pieces = Brackets().Split(label).Where(piece => piece.Length > 0).ToArray();
        var x = middle - (pieces.Sum(WidthOf) + Gap * (pieces.Length - 1)) / 2;
        foreach (var piece in pieces)
        {
            var scale = ScaleOf(piece);
            pen.Text(piece, x, y + height * scale / 2, size * scale, Face.Sans);
            x += WidthOf(piece) + Gap;
        }

        double WidthOf(string piece) => pen.Ink.TextWidth(piece, Face.Sans, size * ScaleOf(piece));
        static double ScaleOf(string piece) => piece is "(" or ")" ? Smaller : 1;
    }

    [GeneratedRegex("([()])")]
    private static partial Regex Brackets();

    // Left of all numbers beside it, also of another voice.
    private void DrawRoll(MeasurePart part, Slot slot, double x)
    {
        double top = slot.Heads.Min(h => LineOf(h.Note)), bottom = slot.Heads.Max(h => LineOf(h.Note));
        var half = part.Voices.SelectMany(v => v.Slots).Where(s => s.Column == slot.Column).SelectMany(s => s.Heads.Select(h => (Slot: s, h.Note)))
            .Where(n => LineOf(n.Note) > top - HouseStyle.TabLineDistance * 1.5 && LineOf(n.Note) < bottom + HouseStyle.TabLineDistance * 1.5)
            .Max(n => pen.Ink.TextWidth(FretLabels.Of(n.Note, IsResumed(n.Slot)), Face.Sans, HouseStyle.FretSize)) / 2;
        ChordDrawer.DrawRoll(pen, slot.Event.Roll, x + ColumnInk.Centre - half - 0.95, top - 0.5, bottom + 0.5);
    }
}
