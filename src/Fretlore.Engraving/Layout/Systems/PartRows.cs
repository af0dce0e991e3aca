using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.RoadMaps;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Engraving.Layout.Tab;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>One part in one system: its staff with its tablature below, or one of them, each drawn in its own coordinates.</summary>
internal sealed class PartRows
{
    private readonly StaffPlan staff;
    private readonly SystemGeometry geometry;
    private readonly Row? onStaff;
    private readonly Row? onTab;

    public PartRows(
        Ink ink, StaffPlan staff, SystemGeometry geometry, ScoreModel model, NoteTitles titles, ChordRows chords, DegreeLabels degrees, RowSkylines skylines, Measure? warned, bool joinsTempo)
    {
        this.staff = staff;
        this.geometry = geometry;
        var warning = warned is null ? null : warned with { Bar = warned.Bar with { StartsRepeat = false } };
        var notes = SystemNotes.Of(geometry, staff, model.Links);
        var free = new RoadMapRow(model, staff, geometry);
        if (staff.ShowsStaff)
        {
            onStaff = DrawStaff(new Pen(ink, skylines.Next(HouseStyle.StaffHeight)), warning, staff.ShowsTab ? null : titles);
            new StaffConnections(onStaff.Pen, geometry, model.Links).Draw(notes);
            if (!staff.ShowsTab)
            {
                new StaffPlaying(onStaff.Pen, staff, geometry, model).Draw(notes);
                new TabSpans(onStaff.Pen, staff, geometry).Draw();
            }
        }
        if (staff.ShowsTab)
        {
            var pen = new Pen(ink, skylines.Next(staff.TabHeight));
            var tab = new TabRow(pen, staff, geometry, model.Song, titles);
            onTab = DrawTab(pen, tab, warning);
            free.DrawNecks(pen);
            new TabMarks(pen, staff, geometry, model, chords, tab).Draw(notes);
        }
        new ArmSigns((onTab ?? onStaff)!.Pen, staff, geometry).Draw();
        new Ornaments(TopPen, staff, geometry).Draw();
        new PositionRow(TopPen, staff, geometry, model.Hands).Draw();
        new StaffMarks(TopPen, staff, geometry, chords, joinsTempo).Draw();
        free.DrawWords(TopPen);
        new DegreeRow((onTab ?? onStaff)!.Pen, staff, geometry, degrees).Draw();
    }

    /// <summary>The upper row's pen, for what stands above the part.</summary>
    public Pen TopPen => (onStaff ?? onTab)!.Pen;

    /// <summary>From the part's top line to the tablature's.</summary>
    public double TabOffset { get; private set; }

    public double BottomLine => onTab is null ? HouseStyle.StaffHeight : TabOffset + staff.TabHeight;

    /// <summary>Ends drawing: sets the tablature as near to the staff as the ink between them allows, and joins their skylines.</summary>
    public Skyline Join()
    {
        onStaff?.Finish();
        onTab?.Finish();
        if (onStaff is null || onTab is null) return TopPen.Skyline;
        TabOffset = Math.Max(
            HouseStyle.StaffHeight + HouseStyle.StaffToTab,
            onStaff.Pen.Skyline.DistanceTo(onTab.Pen.Skyline, HouseStyle.SkylineGap * 1.5));
        onStaff.Pen.Skyline.Merge(onTab.Pen.Skyline, TabOffset);
        return onStaff.Pen.Skyline;
    }

    public void AddBack(List<Mark> marks, double y) => Add(marks, y, row => row.Back);

    public void AddBar(List<Mark> marks, int bar, double y) => Add(marks, y, row => row.Bars[bar]);

    public void AddFront(List<Mark> marks, double y) => Add(marks, y, row => row.Front);

    private void Add(List<Mark> marks, double y, Func<Row, ValueList<Mark>> part)
    {
        if (onStaff is not null && part(onStaff) is { Count: > 0 } above) marks.Add(new Group(null, null, above, y));
        if (onTab is not null && part(onTab) is { Count: > 0 } below) marks.Add(new Group(null, null, below, y + TabOffset));
    }

    // Where there is no tablature, notes are said in words here.
    private Row DrawStaff(Pen pen, Measure? warning, NoteTitles? titles)
    {
        var staffRow = new StaffRow(pen, staff, geometry, titles);
        staffRow.DrawLines(geometry.LinesRight);
        if (warning is not null) staffRow.DrawPrefix(Prefix.Of(pen.Ink, warning, false, 0, true), warning, geometry.Right, false);
        return DrawBars(pen, BarLines.OnStaff(pen), staffRow.DrawMeasure);
    }

    private Row DrawTab(Pen pen, TabRow tab, Measure? warning)
    {
        tab.DrawLines(geometry.LinesRight);
        if (warning is not null && !staff.ShowsStaff) tab.DrawMeter(Prefix.Of(pen.Ink, warning, false, 0, false), warning, geometry.Right);
        return DrawBars(pen, BarLines.OnTab(pen, staff), tab.DrawMeasure);
    }

    private Row DrawBars(Pen pen, BarLines lines, Action<MeasurePlace> draw)
    {
        var back = pen.Take();
        var bars = new ValueList<Mark>[geometry.Measures.Length];
        for (var i = 0; i < bars.Length; i++)
        {
            draw(geometry.Measures[i]);
            lines.Draw(geometry.Measures[i], i + 1 < bars.Length ? geometry.Measures[i + 1] : null);
            bars[i] = pen.Take();
        }
        return new Row(pen, back, bars);
    }

    private sealed record Row(Pen Pen, ValueList<Mark> Back, ValueList<Mark>[] Bars)
    {
        /// <summary>What stands over several bars.</summary>
        public ValueList<Mark> Front { get; private set; }

        public void Finish() => Front = Pen.Take();
    }
}
