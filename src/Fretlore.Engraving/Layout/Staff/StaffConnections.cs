using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Draws ties, slurs and glides between heads of the staff, also where one end is in another system.</summary>
internal sealed class StaffConnections(Pen pen, SystemGeometry geometry, Links links)
{
    private const int FewTries = 14;
    private const int MostTries = 48;
    private const double HeadGap = 0.15;

    private static readonly double[] Cuts = [0, 0.5, 1, 1.6];
    private static readonly double[] Bows = [0, 0.35, 0.7, 1.1, 1.6, 2.2, 3, 4, 5.5, 7];

    private readonly ReachedHeads reached = new(pen);

    // Where ties are, so that those of a unison on several strings don't lie on each other.
    private readonly HashSet<(int End, int Start, int Height)> ties = [];
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
            var to = next is null ? Math.Min(note.X + headWidth + 2.2, geometry.Right)
                : !geometry.Has(next.Slot.Measure) ? geometry.Right + 0.3
                : EndOfTieTo(next, SystemNotes.XOf(geometry, next));
            // From where the string sounds at the end: the last pitch its bend reached.
            if (!placed.IsGrace && reached.EndOf(placed.Slot, placed.Head, geometry.X(placed.Slot)) is { } end) Arc([end.X, RightOf(placed, note.X)], to, end.Y, above);
            else Arc([StartOfTie(note), RightOf(placed, note.X)], to, placed.Sign.Y, above);
        }
        if (!placed.Note.IsTiedFromBefore) return;
        var before = links.Before(placed.Note);
        var isOpen = before is null || !before.Note.IsHeldOn;
        // Clear of the key signature.
        var (goal, entry) = (EndOfTieTo(placed, note.X), geometry.MusicLeft - HeadGap + 0.2);
        if (isOpen) Arc([Math.Max(entry, goal - 2), goal - 0.9], goal, placed.Sign.Y, above);
        else if (!geometry.Has(before!.Slot.Measure)) Arc([entry, goal - 0.9], goal, placed.Sign.Y, above);
    }

    private double StartOfTie(SystemNote note)
    {
        var placed = note.Placed;
        if (placed.IsGrace) return note.X + Width(placed);
        if (!placed.Slot.Reached.IsEmpty || placed.Slot.Trilled is not null) return RightOf(placed, note.X);
        var hasDots = !placed.Slot.Shape.Dots.IsEmpty;
        if (placed.Slot.Heads.Length == 1 && !hasDots && !placed.Note.IsGhost) return note.X + Width(placed);
        return geometry.X(placed.Slot) + placed.Slot.Shape.Right + (hasDots ? 0.1 : 0);
    }

    private double EndOfTieTo(PlacedNote note, double x) => IsPlain(note) ? x : geometry.X(note.Slot) + note.Slot.Shape.Left;

    // A head with nothing left of it that a tie would have to keep clear of, of its own or of another voice; ledger lines end under ties.
    private bool IsPlain(PlacedNote note) =>
        note.IsGrace || (note.Slot.Heads.Length == 1 && note.Slot.Shape.Left >= -pen.Ink.LedgerExtension - 0.01 && note.Slot.Shape.Dots.IsEmpty && !note.Note.IsGhost && note.Sign.Accidental is null);

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

    // From the first place it may start at, on its usual side. Where a note of another voice or string is in the way: from further right,
    // shorter, more bowed, or on the other side.
    private void Arc(ReadOnlySpan<double> starts, double right, double y, bool above)
    {
        const double Shortest = 0.6;
        var side = above ? -1 : 1;
        foreach (var cut in Cuts)
        {
            foreach (var bow in Bows)
            {
                foreach (var tried in (int[])[side, -side])
                {
                    foreach (var start in starts)
                    {
                        double left = start + HeadGap, end = right - HeadGap - cut;
                        if (end - left < Shortest) continue;
                        var height = tried * (HeightOf(left, end) + bow);
                        var at = StartOf(y, tried);
                        if (!pen.Signs.IsFreeSlur(left, at, end, at, height) || !ties.Add(Place(end, at, height))) continue;
                        pen.Slur(left, at, end, at, height);
                        return;
                    }
                }
            }
        }
        var (from, to) = (starts[0] + HeadGap, right - HeadGap);
        // What it leads to stands further right than what it comes from needs.
        if (to - from < Shortest) from = to - Shortest;
        pen.Slur(from, StartOf(y, side), to, StartOf(y, side), side * HeightOf(from, to));
    }

    private static (int End, int Start, int Height) Place(double end, double at, double height) =>
        ((int)Math.Round(end * 4), (int)Math.Round(at * 4), (int)Math.Round(height * 4));

    private static double HeightOf(double left, double right) => Math.Clamp((right - left) * 0.12 + 0.25, 0.35, 0.9);

    private static double StartOf(double y, int side)
    {
        var start = y + side * 0.25;
        // A tie's ends keep off the staff lines (Gould).
        return start is > -0.2 and < 4.2 && Math.Abs(start - Math.Round(start)) < 0.12 ? start + side * 0.14 : start;
    }

    private double Width(PlacedNote note) => pen.Ink.GlyphWidth(Signs.GlyphOf(note.Sign.Shape)) * (note.IsGrace ? HouseStyle.GraceScale : 1);

    // The ink of the whole chord, with accidentals and dots, and of what a bend reaches.
    private double LeftOf(PlacedNote note, double x) => note.IsGrace ? x - (note.Sign.Accidental is null ? 0 : 0.85) : geometry.X(note.Slot) + note.Slot.Shape.Left;

    private double RightOf(PlacedNote note, double x) => note.IsGrace ? x + Width(note) : geometry.X(note.Slot) - note.Slot.Shift + note.Slot.RightOfColumn;

    private void DrawGlide(SystemNote note)
    {
        var placed = note.Placed;
        var y = placed.Sign.Y;
        if (placed.Note.GlideIn != GlideIn.None)
        {
            var from = placed.Note.GlideIn == GlideIn.FromBelow ? 0.8 : -0.8;
            var x = LeftOf(placed, note.X) - 0.2;
            Slide(x - 1.1, y + from, x, y);
        }
        if (placed.Note.GlideOut != GlideOut.None)
        {
            var to = placed.Note.GlideOut == GlideOut.Downwards ? 0.8 : -0.8;
            var x = RightOf(placed, note.X) + 0.2;
            Slide(x, y, x + 1.3, y + to);
        }
        if (links.LeadsTo(placed.Note) is { } next && SystemNotes.IsGlide(next.Note))
        {
            var left = RightOf(placed, note.X) + 0.2;
            var inSystem = geometry.Has(next.Slot.Measure);
            var right = inSystem ? LeftOf(next, SystemNotes.XOf(geometry, next)) - 0.2 : geometry.Right - 0.3;
            var goal = next.Sign.Y;
            var lean = Math.Abs(goal - y) < 0.01 ? (next.Note.Fret.Number >= placed.Note.Fret.Number ? -0.3 : 0.3) : 0;
            if (right - left > 0.4) Slide(left, y - lean, right, goal + lean);
        }
        if (SystemNotes.IsGlide(placed.Note) && links.Before(placed.Note) is { } before && !geometry.Has(before.Slot.Measure))
        {
            var rise = placed.Sign.Y < before.Sign.Y ? 0.5 : -0.5;
            var x = LeftOf(placed, note.X) - 0.2;
            Slide(x - 1.2, y + rise, x, y);
        }
    }

    // Where another voice has signs on the way, as much of the line as is free of them.
    private void Slide(double x1, double y1, double x2, double y2)
    {
        if (pen.Signs.FreeRun(x1, y1, x2, y2, 0.15) is not var (from, to)) return;
        pen.Line(x1 + (x2 - x1) * from, y1 + (y2 - y1) * from, x1 + (x2 - x1) * to, y1 + (y2 - y1) * to, 0.13);
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
        var left = entersHere ? Math.Clamp(note.X - 1, geometry.MusicLeft, geometry.MusicLeft + 0.3) : note.X + Width(placed) / 2;
        var right = leaves ? geometry.Right : SystemNotes.XOf(geometry, end) + Width(end) / 2;
        if (right - left < 0.5) return;
        // On the usual side, or on the other where that is nearer to the heads.
        var above = SlurIsAbove(placed);
        var usual = Lead(placed, note.X, end, left, right, above, FewTries);
        var chosen = usual ?? Lead(placed, note.X, end, left, right, !above, FewTries) ?? Lead(placed, note.X, end, left, right, above, MostTries);
        if (chosen is { } slur) pen.Slur(left, slur.From, right, slur.To, slur.Height);
    }

    // High enough to clear what stands under it; where that is not enough, from further off the heads. Null when nothing clears it.
    private (double From, double To, double Height)? Lead(PlacedNote first, double firstX, PlacedNote last, double left, double right, bool above, int most)
    {
        var side = above ? -1 : 1;
        double from = AttachOf(first, firstX, above), to = AttachOf(last, SystemNotes.XOf(geometry, last), above);
        var height = Math.Clamp((right - left) * 0.1, 0.5, 1.3);
        var off = 0.0;
        for (var tries = 0; tries < most; tries++)
        {
            if (Clears(left, from + side * off, right, to + side * off, side * height)) return (from + side * off, to + side * off, side * height);
            if (tries < 5) height += 0.3;
            else off += 0.25;
        }
        return most == MostTries ? (from, to, side * height) : null;
    }

    private bool Clears(double left, double from, double right, double to, double height)
    {
        const double Gap = 0.15;
        if (!pen.Signs.IsFreeSlur(left, from, right, to, height)) return false;
        var reach = SignMap.SlurReach(left, right);
        for (var i = 1; i < 16; i++)
        {
            double t = i / 16.0, u = 1 - t;
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
        var isOnStem = !note.IsGrace && note.Slot.Stem == (above ? StemSide.Up : StemSide.Down);
        if (note.Rule != StemSide.None || isOnStem || (!note.IsGrace && note.Slot.Heads.Any(h => h.Note.IsAccented || h.Note.IsStaccato)))
        {
            return above ? pen.Skyline.Top(x, x + headWidth) - 0.35 : pen.Skyline.Bottom(x, x + headWidth) + 0.35;
        }
        var edge = note.IsGrace ? note.Sign.Y : above ? note.Slot.Highest.Y : note.Slot.Lowest.Y;
        return edge + (above ? -0.75 : 0.75);
    }
}
