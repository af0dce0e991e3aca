using System.Globalization;
using System.Runtime.InteropServices;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Tab;
using Fretlore.Music;
using Fretlore.Reading;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Draws one system: its parts under each other as close as their ink allows, and what joins them.</summary>
internal sealed class SystemEngraver(
    Ink ink, ScoreModel model, SongReading reading, ChordRows chords, DegreeLabels degrees, PartNames names, double pageWidth)
{
    // How far the bracket's tip reaches below the last line.
    private const double BracketTip = 0.6;

    private readonly NoteTitles titles = new(reading);
    private readonly RowSkylines skylines = new(pageWidth);

    public EngravedSystem Draw(SystemGeometry geometry)
    {
        skylines.StartOver();
        var (first, end, next) = (geometry.First, geometry.First + geometry.Measures.Length, geometry.Next);
        if (next is { StartsSystem: true }) next = null;
        var warned = next is { ShowsMeter: true } || (next is { ChangesKey: true } && model.Staves[0].ShowsStaff) ? next : null;

        var shown = model.Staves.Where(s => !RestsThroughout(s.Index, first, end)).ToArray();
        if (shown.Length == 0 || (!IsRiffs && shown[0].Index != 0)) shown = [model.Staves[0], .. shown];
        var parts = new PartRows[shown.Length];
        for (var i = 0; i < shown.Length; i++) parts[i] = new PartRows(ink, shown[i], geometry, model, titles, chords, degrees, skylines, warned, joinsTempo: i == 0 && !IsRiffs);
        new SystemMarks(parts[0].TopPen, geometry, IsRiffs ? null : shown[0]).Draw();

        var offsets = new double[parts.Length];
        var skyline = parts[0].Join();
        for (var i = 1; i < parts.Length; i++)
        {
            var own = parts[i].Join();
            offsets[i] = Math.Max(
                offsets[i - 1] + parts[i - 1].BottomLine + HouseStyle.PartGap,
                skyline.DistanceTo(own, HouseStyle.SkylineGap * 2));
            skyline.Merge(own, offsets[i]);
        }
        return new EngravedSystem(
            first, end, parts.Length - 1, (y, wider) => Assemble(geometry, shown, parts, [.. offsets.Select((offset, i) => offset + i * wider)], y), skyline.Highest, skyline.Lowest + BracketTip,
            [.. geometry.Measures.Where(p => p.Measure.Section is not null).Select(p => new SectionStart(p.Measure.Section!, p.Left))]);
    }

    // On a sheet of riffs only the neck of the riff is shown; else the first part always is. What stands in words at a riff's start is where it comes.
    private bool IsRiffs => model.Measures[0].StartsSystem;

    private bool RestsThroughout(int staff, int first, int end)
    {
        for (var m = first; m < end; m++)
        {
            if (!model.Measures[m].Parts[staff].IsRest) return false;
        }
        return true;
    }

    private ValueList<Mark> Assemble(SystemGeometry geometry, StaffPlan[] shown, PartRows[] parts, double[] offsets, double y)
    {
        var marks = new List<Mark>();
        for (var i = 0; i < parts.Length; i++) parts[i].AddBack(marks, y + offsets[i]);
        marks.Add(new Group(null, null, LeftEdge(geometry, shown, parts, offsets), y));
        var inBar = new List<Mark>();
        for (var bar = 0; bar < geometry.Measures.Length; bar++)
        {
            inBar.Clear();
            for (var i = 0; i < parts.Length; i++)
            {
                var start = inBar.Count;
                parts[i].AddBar(inBar, bar, y + offsets[i]);
                if (model.Staves.Length == 1) break;
                // In a song of several parts each is named, for who has the bar read aloud.
                var ofPart = new Group(null, shown[i].Part.Title, ValueList.Create<Mark>(CollectionsMarshal.AsSpan(inBar)[start..]));
                inBar.RemoveRange(start, inBar.Count - start);
                if (ofPart.Marks.Count > 0) inBar.Add(ofPart);
            }
            var measure = geometry.Measures[bar].Measure;
            marks.Add(new Group(IdOf(measure), TitleOf(measure), inBar.ToValueList()));
        }
        for (var i = 0; i < parts.Length; i++) parts[i].AddFront(marks, y + offsets[i]);
        return marks.ToValueList();
    }

    private ValueList<Mark> LeftEdge(SystemGeometry geometry, StaffPlan[] shown, PartRows[] parts, double[] offsets)
    {
        var pen = new Pen(ink, new Skyline(0, 1, 0, 0));
        var x = geometry.Left + ink.ThinBar / 2;
        pen.Line(x, -ink.StaffLine / 2, x, offsets[^1] + parts[^1].BottomLine + ink.StaffLine / 2, ink.ThinBar);
        for (var i = 0; i < parts.Length; i++)
        {
            double top = offsets[i] - 0.15, bottom = offsets[i] + parts[i].BottomLine + 0.15;
            var bracket = geometry.Left - 0.95;
            pen.Line(bracket + 0.25, top, bracket + 0.25, bottom, 0.5);
            pen.Glyph(Smufl.BracketTop, bracket, top);
            pen.Glyph(Smufl.BracketBottom, bracket, bottom);
            names.Draw(pen, shown[i].Index, geometry.Measures[0].Measure.Index == 0, geometry.Left, (top + bottom) / 2);
        }
        return pen.Take();
    }

    private static string IdOf(Measure measure) => "bar-" + (measure.FirstBar + 1).ToString(CultureInfo.InvariantCulture);

    private static string TitleOf(Measure measure) => measure.IsMultiRest
        ? string.Create(CultureInfo.InvariantCulture, $"Bars {measure.Bar.Number} to {measure.LastBar.Number}, rest")
        : measure.Bar.IsPickup ? "Pickup bar" : string.Create(CultureInfo.InvariantCulture, $"Bar {measure.Bar.Number}");
}
