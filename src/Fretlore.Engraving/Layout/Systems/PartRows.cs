using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.RoadMaps;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Engraving.Layout.Tab;
using Fretlore.Music;
using Fretlore.Reading;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>One part in one system: its staff with its tablature below, each drawn in its own coordinates.</summary>
internal sealed class PartRows
{
    private readonly StaffPlan staff;
    private readonly ValueList<Mark>[] staffBars;
    private readonly ValueList<Mark>[] tabBars;

    public PartRows(
        Ink ink, StaffPlan staff, SystemGeometry geometry, ScoreModel model, SongReading reading, ChordRows chords, double pageWidth, Measure? warned)
    {
        this.staff = staff;
        StaffPen = new Pen(ink, new Skyline(0, pageWidth, 0, HouseStyle.StaffHeight));
        TabPen = new Pen(ink, new Skyline(0, pageWidth, 0, staff.TabHeight));
        var count = geometry.Measures.Length;
        staffBars = new ValueList<Mark>[count];
        tabBars = new ValueList<Mark>[count];

        var onStaff = new StaffRow(StaffPen, staff, geometry);
        var onTab = new TabRow(TabPen, staff, geometry, reading);
        onStaff.DrawLines(geometry.LinesRight);
        onTab.DrawLines(geometry.LinesRight);
        if (warned is not null)
        {
            var signs = warned with { Bar = warned.Bar with { StartsRepeat = false } };
            onStaff.DrawPrefix(Prefix.Of(ink, signs, false, 0), signs, geometry.Right, false);
        }
        StaffBack = StaffPen.Take();
        TabBack = TabPen.Take();

        BarLines staffLines = BarLines.OnStaff(StaffPen), tabLines = BarLines.OnTab(TabPen, staff);
        for (var i = 0; i < count; i++)
        {
            var next = i + 1 < count ? geometry.Measures[i + 1] : null;
            onStaff.DrawMeasure(geometry.Measures[i]);
            staffLines.Draw(geometry.Measures[i], next);
            staffBars[i] = StaffPen.Take();
            onTab.DrawMeasure(geometry.Measures[i]);
            tabLines.Draw(geometry.Measures[i], next);
            tabBars[i] = TabPen.Take();
        }
        var notes = SystemNotes.Of(geometry, staff);
        new StaffConnections(StaffPen, geometry, model.Links).Draw(notes);
        new StaffMarks(StaffPen, staff, geometry, chords).Draw();
        var free = new RoadMapRow(model, staff, geometry);
        free.DrawWords(StaffPen);
        free.DrawNecks(TabPen);
        new TabMarks(TabPen, staff, geometry, model.Links, onTab).Draw(notes);
    }

    public Pen StaffPen { get; }

    public Pen TabPen { get; }

    private ValueList<Mark> StaffBack { get; }

    private ValueList<Mark> TabBack { get; }

    /// <summary>From the staff's top line to the tablature's.</summary>
    public double TabOffset { get; private set; }

    public double BottomLine => TabOffset + staff.TabHeight;

    /// <summary>Sets the tablature as near to the staff as the ink between them allows, and joins their skylines.</summary>
    public Skyline Join()
    {
        TabOffset = Math.Max(
            HouseStyle.StaffHeight + HouseStyle.StaffToTab,
            StaffPen.Skyline.DistanceTo(TabPen.Skyline, HouseStyle.SkylineGap * 1.5));
        StaffPen.Skyline.Merge(TabPen.Skyline, TabOffset);
        return StaffPen.Skyline;
    }

    public void AddBack(List<Mark> marks, double y)
    {
        foreach (var mark in StaffBack) marks.Add(mark.Moved(0, y));
        foreach (var mark in TabBack) marks.Add(mark.Moved(0, y + TabOffset));
    }

    public void AddBar(List<Mark> marks, int bar, double y)
    {
        foreach (var mark in staffBars[bar]) marks.Add(mark.Moved(0, y));
        foreach (var mark in tabBars[bar]) marks.Add(mark.Moved(0, y + TabOffset));
    }

    public void AddFront(List<Mark> marks, double y)
    {
        foreach (var mark in StaffPen.Take()) marks.Add(mark.Moved(0, y));
        foreach (var mark in TabPen.Take()) marks.Add(mark.Moved(0, y + TabOffset));
    }
}
