using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Tab;
using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.RoadMaps;

/// <summary>A lick of a road map as a small tablature: strings, frets, slurs, slides and bends, spaced by time; its name before it.</summary>
internal sealed class LickTab
{
    private const double LineDistance = 1.1;
    private const double FretSize = 1.35;
    private const double NameSize = HouseStyle.SmallSize;
    private const double NameGap = 0.8;
    private const double Edge = 0.9;

    // Room above the top line for how far a bend goes, and for a slur on the top string.
    private const double Above = 2.6;

    private readonly Ink ink;
    private readonly string name;
    private readonly int strings;
    private readonly double nameWidth;
    private readonly ImmutableArray<(double X, Event Event)> events;
    private readonly ImmutableArray<double> barLines;

    private LickTab(Ink ink, Riff riff)
    {
        this.ink = ink;
        (name, strings) = (riff.Name.Replace('-', ' ').Replace('.', ' '), riff.Neck.StringCount);
        nameWidth = ink.TextWidth(name, Face.SerifItalic, NameSize) + NameGap;
        var placed = ImmutableArray.CreateBuilder<(double, Event)>();
        var lines = ImmutableArray.CreateBuilder<double>();
        var x = nameWidth + Edge;
        for (var bar = 0; bar < riff.Content.Count; bar++)
        {
            foreach (var item in riff.Content[bar].Strands.SelectMany(s => s.Events).OrderBy(e => e.Start))
            {
                var half = Widest(item) / 2;
                if (!item.IsRest) placed.Add((x + half, item));
                // A quarter takes twice the room of a sixteenth.
                x += 2 * half + 0.7 + 1.1 * Math.Sqrt(item.Duration.ToDouble());
            }
            lines.Add(x);
            x += Edge;
        }
        (events, barLines) = (placed.ToImmutable(), lines.ToImmutable());
    }

    public double Width => barLines[^1];

    /// <summary>From the top of what it draws to its bottom line.</summary>
    public double Height => Above + (strings - 1) * LineDistance;

    /// <summary>The licks of a road map that the song has, in the order written, each once.</summary>
    public static IEnumerable<LickTab> Of(Ink ink, RoadMap map, Song song) => map.RulesOf<LickRule>().SelectMany(l => l.Riffs.Items).Distinct()
        .Select(name => song.Riffs.FirstOrDefault(r => r.Name == name)).OfType<Riff>().Where(r => r.Content.Any(b => b.Notes.Any())).Select(r => new LickTab(ink, r));

    /// <param name="pen">The row's.</param>
    /// <param name="left">Where the name begins.</param>
    /// <param name="bottom">The bottom line.</param>
    public void Draw(Pen pen, double left, double bottom)
    {
        var top = bottom - (strings - 1) * LineDistance;
        pen.Text(name, left, (top + bottom) / 2 + NameSize * 0.3, NameSize, Face.SerifItalic);
        for (var line = 0; line < strings; line++) pen.Line(left + nameWidth, top + line * LineDistance, left + Width, top + line * LineDistance, ink.StaffLine);
        pen.Line(left + nameWidth, top, left + nameWidth, bottom, ink.StaffLine);
        foreach (var at in barLines) pen.Line(left + at, top, left + at, bottom, ink.StaffLine);
        var before = new Dictionary<StringNumber, (double X, Note Note)>();
        foreach (var (x, item) in events)
        {
            foreach (var note in item.Notes)
            {
                var y = top + (note.String.Value - 1) * LineDistance;
                if (before.TryGetValue(note.String, out var last)) Join(pen, last.X, left + x, y, last.Note, note);
                if (note.Attack != Attack.Held) Fret(pen, left + x, y, note);
                if (note.Bend is { ToCents.Count: > 0 } bend && bend.ToCents[0] > bend.FromCents) Bent(pen, left + x + HalfWidth(note) + 0.1, y, top, bend.ToCents[0]);
                before[note.String] = (left + x, note);
            }
        }
    }

    private double Widest(Event item) => 2 * item.Notes.Select(HalfWidth).DefaultIfEmpty(0.3).Max();

    private double HalfWidth(Note note) => ink.TextWidth(FretLabels.Of(note, false), Face.Sans, FretSize) / 2;

    private void Fret(Pen pen, double x, double y, Note note)
    {
        var half = HalfWidth(note) + 0.12;
        pen.White(x - half, y - 0.5, x + half, y + 0.5);
        pen.Text(FretLabels.Of(note, false), x, y + FretSize * 0.36, FretSize, Face.Sans, Anchor.Middle);
    }

    private void Join(Pen pen, double from, double to, double y, Note first, Note second)
    {
        var (left, right) = (from + HalfWidth(first) + 0.15, to - HalfWidth(second) - 0.15);
        if (second.Attack is Attack.HammerOn or Attack.PullOff or Attack.Tap) pen.Slur(from, y - 0.6, to, y - 0.6, -0.45);
        if (second.Attack is not (Attack.Glide or Attack.PickedGlide) || right <= left) return;
        var rise = second.Fret.Number > first.Fret.Number ? 0.35 : -0.35;
        pen.Line(left, y + rise, right, y - rise, 0.12);
    }

    private static void Bent(Pen pen, double x, double y, double top, int cents)
    {
        var tip = top - 0.7;
        pen.Curve(new(x, y), new(x + 0.35, y), new(x + 0.45, y - 0.4), new(x + 0.45, tip + 0.4), 0.11);
        pen.Polygon(new Point(x + 0.45, tip), new Point(x + 0.2, tip + 0.5), new Point(x + 0.7, tip + 0.5));
        pen.Text(BendAmounts.Of(cents), x + 0.45, tip - 0.25, FretSize * 0.85, Face.Sans, Anchor.Middle);
    }
}
