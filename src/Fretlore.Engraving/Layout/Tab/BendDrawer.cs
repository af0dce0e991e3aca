using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>Where the drawing of a bend ends.</summary>
/// <param name="X">The tip of its last arrow, or the end of its dashes.</param>
/// <param name="Clear">Right of its amount, where a vibrato may begin.</param>
internal readonly record struct BendEnd(double X, double Clear);

/// <summary>Draws bends: a curve from the number to an arrow with its amount, back down for a release, dashes for a hold.</summary>
internal sealed class BendDrawer(Pen pen)
{
    private const double Height = 1.7;
    private const double Step = 1.3;
    private const double Thickness = 0.15;
    private const double ArrowLength = 0.75;
    private const double ArrowHalf = 0.33;
    private const double BesideNumber = 0.6;
    private const double ShortestMove = 1.1;
    private const double LongestMove = 2.8;

    private readonly List<(int Cents, double X, double Y)> amounts = [];
    private readonly SignMap lines = new();

    /// <summary>How far above the lines the bends of a bar reach, amounts included; 0 where there are none.</summary>
    public static double ReachAbove(MeasurePart part)
    {
        var levels = new HashSet<int>();
        foreach (var voice in part.Voices)
        {
            foreach (var slot in voice.Slots)
            {
                foreach (var head in slot.Heads)
                {
                    if (head.Note.Bend is { } bend) levels.UnionWith(bend.ToCents.Items.Add(bend.FromCents).Where(cents => cents > 0));
                }
            }
        }
        return levels.Count == 0 ? 0 : Height + Step * (levels.Count - 1) + HouseStyle.SmallSize;
    }

    /// <param name="note">The note.</param>
    /// <param name="chord">What is bent with it.</param>
    /// <param name="middle">The middle of its number, or of where it would stand.</param>
    /// <param name="room">Where the next thing on the row begins.</param>
    /// <param name="heldFrom">For a held note, where the note before it left off.</param>
    public BendEnd Draw(PlacedNote note, BentChord chord, double middle, double room, double heldFrom)
    {
        var halfWidth = chord.HalfWidth;
        if (note.Note.Bend is not { } bend) return new BendEnd(middle + halfWidth, middle + halfWidth);
        var shift = chord.ShiftOf(note.Note);
        var line = TabRow.LineOf(note.Note);
        var x = middle + halfWidth + 0.15;
        var y = line;
        if (bend.FromCents > 0)
        {
            var aside = chord.IsAside && !note.Note.IsTiedFromBefore;
            x = aside ? middle + halfWidth + BesideNumber : middle;
            shift = 0;
            y = TopOf(bend.FromCents);
            if (note.Note.IsTiedFromBefore)
            {
                Hold(heldFrom, x, y);
            }
            else
            {
                if (aside) Curve(new(middle + halfWidth + 0.15, line), new(x, line), new(x, line), new(x, line - BesideNumber));
                Straight(x, line - (aside ? BesideNumber : 0.75), x, y + ArrowLength * 0.8);
                Arrow(x, y, true);
                Amount(bend.FromCents, x, y);
            }
        }
        var moves = bend.ToCents.Count;
        if (moves == 0)
        {
            var end = Math.Max(x + 0.8, room - 0.5);
            Hold(note.Note.IsTiedFromBefore ? x : x + 0.45, end, y);
            return new BendEnd(end, x + 0.6);
        }
        // A vibrato at the top gets the larger share of the time.
        var share = note.Note.Vibrato.Width != Score.VibratoWidth.None ? 0.35 : 0.85;
        var span = Math.Clamp((room - 0.7 - x - shift) * share / moves, ShortestMove, LongestMove);
        var cents = bend.FromCents;
        var clear = x;
        foreach (var to in bend.ToCents)
        {
            var goal = x + span + shift;
            shift = 0;
            var goalY = to <= 0 ? line - 0.55 : TopOf(to);
            var up = to > cents;
            Curve(new(x, y), new(x + span * 0.75, y), new(goal, y + (goalY - y) * 0.35), new(goal, goalY + (up ? ArrowLength : -ArrowLength) * 0.8));
            Arrow(goal, goalY, up);
            clear = goal + 0.4;
            if (up) clear = Amount(to, goal, goalY);
            else if (to > 0) clear = Amount(to, goal + 0.9, goalY + 0.6);
            (x, y, cents) = (goal, goalY, to);
        }
        return new BendEnd(x, clear + 0.4);

        double TopOf(int height) => -Height - Step * Math.Max(0, Array.IndexOf(chord.Heights, height));
    }

    /// <summary>The dashes of a bend that is held beyond its note, up to the system's end.</summary>
    public void HoldOn(PlacedNote note, BentChord chord, double from, double to) =>
        Hold(from, to, -Height - Step * Math.Max(0, Array.IndexOf(chord.Heights, note.Note.Bend!.EndCents)));

    private void Hold(double from, double to, double y)
    {
        if (to - from > 0.5) Straight(from + 0.2, y, to, y, LineStyle.Dashed);
    }

    private void Arrow(double x, double y, bool up)
    {
        lines.Add(new Box(x - ArrowHalf, Math.Min(y, up ? y + ArrowLength : y - ArrowLength), x + ArrowHalf, Math.Max(y, up ? y + ArrowLength : y - ArrowLength)));
        var back = up ? y + ArrowLength : y - ArrowLength;
        pen.Polygon(new Point(x, y), new Point(x - ArrowHalf, back), new Point(x + ArrowHalf, back));
    }

    /// <summary>Writes the amounts, once all lines stand: once for notes bent together, and over lines of other bends and their amounts.</summary>
    public void DrawAmounts()
    {
        const double Gap = 0.15;
        var height = pen.Ink.CapHeight(Face.Sans, HouseStyle.SmallSize) + 0.2;
        foreach (var (cents, x, y) in amounts)
        {
            var text = BendAmounts.Of(cents);
            var half = pen.Ink.TextWidth(text, Face.Sans, HouseStyle.SmallSize) / 2 + Gap;
            var baseline = y - 0.3;
            bool IsTaken()
            {
                var box = new Box(x - half, baseline - height, x + half, baseline + Gap);
                return !pen.Signs.IsFree(box) || !lines.IsFree(box);
            }
            while (IsTaken()) baseline -= 0.35;
            pen.Text(text, x, baseline, HouseStyle.SmallSize, Face.Sans, Anchor.Middle);
        }
        amounts.Clear();
        lines.Clear();
    }

    /// <returns>The right end of the amount.</returns>
    private double Amount(int cents, double x, double y)
    {
        var width = pen.Ink.TextWidth(BendAmounts.Of(cents), Face.Sans, HouseStyle.SmallSize);
        if (!amounts.Exists(a => a.Cents == cents && Math.Abs(a.Y - y) < 0.01 && Math.Abs(a.X - x) < width)) amounts.Add((cents, x, y));
        return x + width / 2;
    }

    private void Curve(Point from, Point control1, Point control2, Point to)
    {
        const int Pieces = 10;
        pen.Curve(from, control1, control2, to, Thickness);
        var last = from;
        for (var i = 1; i <= Pieces; i++)
        {
            double t = i / (double)Pieces, u = 1 - t;
            var next = new Point(
                u * u * u * from.X + 3 * u * u * t * control1.X + 3 * u * t * t * control2.X + t * t * t * to.X,
                u * u * u * from.Y + 3 * u * u * t * control1.Y + 3 * u * t * t * control2.Y + t * t * t * to.Y);
            AddLine(last, next);
            last = next;
        }
    }

    private void Straight(double x1, double y1, double x2, double y2, LineStyle style = LineStyle.Solid)
    {
        pen.Line(x1, y1, x2, y2, Thickness, style);
        AddLine(new Point(x1, y1), new Point(x2, y2));
    }

    private void AddLine(Point a, Point b)
    {
        const double Half = Thickness / 2;
        lines.Add(new Box(Math.Min(a.X, b.X) - Half, Math.Min(a.Y, b.Y) - Half, Math.Max(a.X, b.X) + Half, Math.Max(a.Y, b.Y) + Half));
    }
}
