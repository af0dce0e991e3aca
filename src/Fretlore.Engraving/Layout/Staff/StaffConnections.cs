using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws ties, slurs and glides between heads of the staff, also where one end is in another system.</summary>
internal sealed class StaffConnections(Pen pen, SystemGeometry geometry, Links links)
{
    private const double HeadGap = 0.15;

    private readonly ReachedHeads reached = new(pen);
    private readonly double headWidth = pen.Ink.GlyphWidth(Smufl.NoteheadBlack);

    public void Draw(List<SystemNote> notes)
    {
        foreach (var note in notes)
        {
            DrawTie(note);
            DrawGlide(note);
        }
        foreach (var note in notes) DrawSlur(note);
    }

    private void DrawTie(SystemNote note)
    {
        var placed = note.Placed;
        var above = TieIsAbove(placed);
        if (placed.Note.IsHeldOn)
        {
            var next = links.TiedTo(placed.Note);
            var to = next is not null && geometry.Has(next.Slot.Measure) ? (next.Slot.Heads.Length == 1 ? SystemNotes.XOf(geometry, next) : geometry.X(next.Slot) + next.Slot.Shape.Left + 0.1)
                : next is null ? Math.Min(note.X + headWidth + 2.2, geometry.Right) : geometry.Right + 0.3;
            // From where the string sounds at the end: the last pitch its bend reached.
            if (!placed.IsGrace && reached.EndOf(placed.Slot, placed.Head, geometry.X(placed.Slot)) is { } end)
            {
                Arc(end.X, Math.Max(to, end.X + 0.9), end.Y, above);
            }
            else
            {
                Arc(placed.IsGrace || placed.Slot.Heads.Length == 1 ? note.X + Width(placed) : geometry.X(placed.Slot) + placed.Slot.Shape.Right - 0.1, to, placed.Sign.Y, above);
            }
        }
        if (!placed.Note.IsTiedFromBefore) return;
        var before = links.Before(placed.Note);
        var isOpen = before is null || !before.Note.IsHeldOn;
        if (isOpen) Arc(note.X - 2, note.X, placed.Sign.Y, above);
        else if (!geometry.Has(before!.Slot.Measure)) Arc(Math.Min(geometry.MusicLeft - 0.2, note.X - 1.4), note.X, placed.Sign.Y, above);
    }

    // Away from the stem for one note; in chords the upper half up and the lower half down (Gould).
    private static bool TieIsAbove(PlacedNote note)
    {
        if (note.Rule != StemSide.None) return note.Rule == StemSide.Up;
        var heads = note.Slot.Heads;
        if (heads.Length <= 1 || note.IsGrace) return note.Slot.Stem == StemSide.Down || (note.Slot.Stem == StemSide.None && note.Sign.Position >= 4);
        var upper = heads.Length / 2;
        if (heads.Length % 2 == 1 && note.Head == upper) return note.Sign.Position >= 4;
        return note.Head >= upper;
    }

    private void Arc(double left, double right, double y, bool above)
    {
        var side = above ? -1 : 1;
        left += HeadGap;
        right -= HeadGap;
        if (right - left < 0.6) (left, right) = ((left + right) / 2 - 0.3, (left + right) / 2 + 0.3);
        var height = Math.Clamp((right - left) * 0.12 + 0.25, 0.35, 0.9);
        var start = y + side * 0.25;
        // A tie's ends keep off the staff lines (Gould).
        if (start is > -0.2 and < 4.2 && Math.Abs(start - Math.Round(start)) < 0.12) start += side * 0.14;
        pen.Slur(left, start, right, start, side * height);
    }

    private double Width(PlacedNote note) => pen.Ink.GlyphWidth(Signs.GlyphOf(note.Sign.Shape)) * (note.IsGrace ? HouseStyle.GraceScale : 1);

    // The ink of the whole chord, with accidentals and dots, and of what a bend reaches.
    private double LeftOf(PlacedNote note, double x) => note.IsGrace ? x - (note.Sign.Accidental is null ? 0 : 0.85) : geometry.X(note.Slot) + note.Slot.Shape.Left;

    private double RightOf(PlacedNote note, double x) => note.IsGrace ? x + Width(note) : geometry.X(note.Slot) + note.Slot.Shape.Right + ReachedHeads.Width(note.Slot);

    private void DrawGlide(SystemNote note)
    {
        var placed = note.Placed;
        var y = placed.Sign.Y;
        if (placed.Note.GlideIn != GlideIn.None)
        {
            var from = placed.Note.GlideIn == GlideIn.FromBelow ? 0.8 : -0.8;
            var x = LeftOf(placed, note.X) - 0.2;
            pen.Line(x - 1.1, y + from, x, y, 0.13);
        }
        if (placed.Note.GlideOut != GlideOut.None)
        {
            var to = placed.Note.GlideOut == GlideOut.Downwards ? 0.8 : -0.8;
            var x = RightOf(placed, note.X) + 0.2;
            pen.Line(x, y, x + 1.3, y + to, 0.13);
        }
        if (links.LeadsTo(placed.Note) is { } next && SystemNotes.IsGlide(next.Note))
        {
            var left = RightOf(placed, note.X) + 0.2;
            var inSystem = geometry.Has(next.Slot.Measure);
            var right = inSystem ? LeftOf(next, SystemNotes.XOf(geometry, next)) - 0.2 : geometry.Right - 0.3;
            var goal = next.Sign.Y;
            var lean = Math.Abs(goal - y) < 0.01 ? (next.Note.Fret.Number >= placed.Note.Fret.Number ? -0.3 : 0.3) : 0;
            if (right - left > 0.4) pen.Line(left, y - lean, right, goal + lean, 0.13);
        }
        if (SystemNotes.IsGlide(placed.Note) && links.Before(placed.Note) is { } before && !geometry.Has(before.Slot.Measure))
        {
            var rise = placed.Sign.Y < before.Sign.Y ? 0.5 : -0.5;
            var x = LeftOf(placed, note.X) - 0.2;
            pen.Line(x - 1.2, y + rise, x, y, 0.13);
        }
    }

    // One slur over a whole run of hammered, pulled-off and glided notes, drawn from its first note or from the system's start.
    private void DrawSlur(SystemNote note)
    {
        var placed = note.Placed;
        var slurredHere = SystemNotes.IsSlurred(placed.Note);
        var before = slurredHere ? links.Before(placed.Note) : null;
        var startsHere = !slurredHere && links.LeadsTo(placed.Note) is { } after && SystemNotes.IsSlurred(after.Note);
        var entersHere = before is not null && !geometry.Has(before.Slot.Measure);
        if (!startsHere && !entersHere) return;
        if (placed.IsGrace && links.LeadsTo(placed.Note) is { IsGrace: false } main && main.Slot.Measure == placed.Slot.Measure)
        {
            DrawGraceSlur(note, main);
            return;
        }
        if (!placed.IsGrace && placed.Head != Outer(placed) && placed.Slot.Heads.Length > 1) return;

        var end = placed;
        var leaves = false;
        double top = placed.Sign.Y, bottom = placed.Sign.Y;
        while (links.LeadsTo(end.Note) is { } next && SystemNotes.IsSlurred(next.Note))
        {
            if (!geometry.Has(next.Slot.Measure))
            {
                leaves = true;
                break;
            }
            end = next;
            top = Math.Min(top, end.Sign.Y);
            bottom = Math.Max(bottom, end.Sign.Y);
        }
        var left = entersHere ? Math.Min(geometry.MusicLeft, note.X - 1) : note.X + Width(placed) / 2;
        var right = leaves ? geometry.Right : SystemNotes.XOf(geometry, end) + Width(end) / 2;
        if (right - left < 0.5) return;
        var above = SlurIsAbove(placed);
        var side = above ? -1 : 1;
        double from = AttachOf(placed, note.X, above), to = AttachOf(end, SystemNotes.XOf(geometry, end), above);
        // High enough to clear what stands under it; where that is not enough, from further off the heads.
        var height = Math.Clamp((right - left) * 0.1, 0.5, 1.3);
        var off = 0.0;
        for (var tries = 0; tries < 14 && !Clears(left, from + side * off, right, to + side * off, side * height); tries++)
        {
            if (tries < 5) height += 0.3;
            else off += 0.25;
        }
        pen.Slur(left, from + side * off, right, to + side * off, side * height);
    }

    private bool Clears(double left, double from, double right, double to, double height)
    {
        const double Gap = 0.15;
        for (var i = 1; i < 16; i++)
        {
            double t = i / 16.0, u = 1 - t;
            var reach = Math.Min((right - left) * 0.3, 2.5);
            var x = u * u * u * left + 3 * u * u * t * (left + reach) + 3 * u * t * t * (right - reach) + t * t * t * right;
            if (x < left + headWidth * 0.5 || x > right - headWidth * 0.5) continue;
            var y = u * u * u * from + 3 * u * u * t * (from + height * 4 / 3) + 3 * u * t * t * (to + height * 4 / 3) + t * t * t * to;
            if (height < 0 ? pen.Skyline.Top(x - 0.3, x + 0.3) < y + Gap : pen.Skyline.Bottom(x - 0.3, x + 0.3) > y - Gap) return false;
        }
        return true;
    }

    // Under the heads, on the other side from the grace note's stem (Gould), to the near edge of the main head.
    private void DrawGraceSlur(SystemNote grace, PlacedNote main)
    {
        var left = grace.X + Width(grace.Placed) / 2;
        var right = SystemNotes.XOf(geometry, main) + 0.25;
        if (right - left > 0.5) pen.Slur(left, grace.Placed.Sign.Y + 0.55, right, main.Sign.Y + 0.7, 0.45);
    }

    private static int Outer(PlacedNote note) => SlurIsAbove(note) ? note.Slot.Heads.Length - 1 : 0;

    private static bool SlurIsAbove(PlacedNote note) => note.Rule != StemSide.None ? note.Rule == StemSide.Up
        : note.IsGrace ? note.Slot.Stem == StemSide.Down
        : note.Slot.Stem != StemSide.Up;

    // Off the outer head; with two voices, where the slur is on the stems' side, off whatever stands there.
    private double AttachOf(PlacedNote note, double x, bool above)
    {
        if (note.Rule != StemSide.None || (!note.IsGrace && note.Slot.Heads.Any(h => h.Note.IsAccented || h.Note.IsStaccato)))
        {
            return above ? pen.Skyline.Top(x, x + headWidth) - 0.35 : pen.Skyline.Bottom(x, x + headWidth) + 0.35;
        }
        var edge = note.IsGrace ? note.Sign.Y : above ? note.Slot.Highest.Y : note.Slot.Lowest.Y;
        return edge + (above ? -0.75 : 0.75);
    }
}
