using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Sets the chords of voices that begin together: lower ones aside where they would touch, accidentals and dots as of one chord.</summary>
/// <remarks>Gould: heads of the same look share a unison; a second stands side by side, the stem-up note left; crossing voices need more room.</remarks>
internal sealed class SharedColumns(Ink ink, ChordShapes shapes)
{
    private const double Second = 1.08;
    private const double Aside = 1.35;
    private const double Step = 0.15;
    private const double Furthest = 5;
    private const double DotGap = 0.3;
    private const double GraceGap = 0.2;

    public ImmutableArray<Voice> Apart(ImmutableArray<Voice> voices)
    {
        var slots = voices.Select(v => v.Slots.ToBuilder()).ToArray();
        var columns = new Dictionary<int, List<(int Voice, int Slot)>>();
        for (var v = 0; v < slots.Length; v++)
        {
            for (var i = 0; i < slots[v].Count; i++)
            {
                if (slots[v][i].IsRest) continue;
                if (!columns.TryGetValue(slots[v][i].Column, out var here)) columns[slots[v][i].Column] = here = [];
                here.Add((v, i));
            }
        }
        foreach (var here in columns.Values)
        {
            if (here.Count < 2) continue;
            var set = Set([.. here.Select(h => slots[h.Voice][h.Slot])]);
            for (var k = 0; k < set.Length; k++) slots[here[k].Voice][here[k].Slot] = set[k];
        }
        return [.. voices.Select((v, i) => v with { Slots = slots[i].ToImmutable() })];
    }

    private Slot[] Set(Slot[] slots)
    {
        var shifts = new double[slots.Length];
        for (var k = 1; k < slots.Length; k++) shifts[k] = ShiftOf(slots, shifts, k);

        var boxes = new List<Box>();
        double left = 0, right = 0;
        var heads = new List<(int Slot, int Index, Head Head)>();
        for (var k = 0; k < slots.Length; k++)
        {
            var own = BoxesOf(slots[k], shifts[k]);
            boxes.AddRange(own);
            left = Math.Min(left, own.Min(b => b.Left));
            for (var h = 0; h < slots[k].Heads.Length; h++) heads.Add((k, h, slots[k].Heads[h]));
        }
        for (var k = 0; k < slots.Length; k++)
        {
            if (slots[k].Stem != StemSide.Down || StrokesOf(slots[k], shifts[k]) is not { } strokes) continue;
            left = Math.Min(left, strokes.Left);
            boxes.Add(strokes);
        }
        heads.Sort((a, b) => a.Head.Position.CompareTo(b.Head.Position));
        Head[] sorted = [.. heads.Select(h => h.Head)];
        var accidentals = AccidentalStack.Place(ink, sorted, boxes, ref left);
        var origins = slots.Select(s => new double[s.Heads.Length]).ToArray();
        for (var i = 0; i < heads.Count; i++) origins[heads[i].Slot][heads[i].Index] = accidentals[i] - shifts[heads[i].Slot];

        var dots = DotsOf(slots, shifts);
        for (var k = 0; k < slots.Length; k++)
        {
            right = Math.Max(right, shifts[k] + slots[k].Shape.Right);
            if (dots[k].Length > 0) right = Math.Max(right, shifts[k] + dots[k].Max(d => d.X) + 0.4);
        }
        var set = new Slot[slots.Length];
        for (var k = 0; k < slots.Length; k++)
        {
            var shape = slots[k].Shape with { AccidentalX = [.. origins[k]], Dots = dots[k], Left = left - shifts[k], Right = right - shifts[k] };
            set[k] = slots[k] with { Shift = shifts[k], Shape = shape };
            // What bends of the next voice reach comes after this one's, and its grace notes before.
            right += ReachedHeads.Width(slots[k]);
            if (slots[k].Graces.Length > 0) left -= GraceDrawer.Reach(slots[k]) + GraceGap;
        }
        for (var k = 0; k < set.Length; k++) set[k] = set[k] with { RightOfColumn = right };
        return set;
    }

    // Each voice's dots stand by its own heads, further right where heads of another voice are in the way; two voices with one place for a dot share it.
    private ImmutableArray<(double X, int Position)>[] DotsOf(Slot[] slots, double[] shifts)
    {
        const double Half = 0.3;
        const double Alike = 0.5;
        var at = new double[slots.Length];
        for (var k = 0; k < slots.Length; k++)
        {
            if (slots[k].Shape.Dots.IsEmpty) continue;
            at[k] = shifts[k] + slots[k].Shape.Dots.Min(d => d.X);
            for (var other = 0; other < slots.Length; other++)
            {
                if (other == k) continue;
                foreach (var box in BoxesOf(slots[other], shifts[other]))
                {
                    if (slots[k].Shape.Dots.Any(d => box.Top < 4 - d.Position / 2.0 + Half && box.Bottom > 4 - d.Position / 2.0 - Half)) at[k] = Math.Max(at[k], box.Right + DotGap);
                }
            }
        }
        // In one line where they come near to it.
        for (var k = 0; k < slots.Length; k++)
        {
            foreach (var x in at) if (at[k] > 0 && x > at[k] && x - at[k] < Alike) at[k] = x;
        }
        var taken = new HashSet<int>();
        return [.. slots.Select((slot, k) =>
        {
            if (slot.Shape.Dots.IsEmpty) return slot.Shape.Dots;
            var move = at[k] - shifts[k] - slot.Shape.Dots.Min(d => d.X);
            var free = slot.Shape.Dots.Where(d => !taken.Contains(d.Position)).Select(d => (d.X + move, d.Position)).ToImmutableArray();
            foreach (var (_, position) in free) taken.Add(position);
            return free;
        })];
    }

    private double ShiftOf(Slot[] slots, double[] shifts, int k)
    {
        var fits = (double shift) =>
        {
            for (var other = 0; other < k; other++)
            {
                if (Touch(slots[other], shifts[other], slots[k], shift)) return false;
            }
            return true;
        };
        if (fits(0)) return 0;
        if (fits(Second)) return Second;
        var at = Aside;
        while (at < Furthest && !fits(at)) at += Step;
        return at;
    }

    private bool Touch(Slot up, double upX, Slot down, double downX)
    {
        if (upX == downX && IsUnison(up, down)) return false;
        List<Box> ups = BoxesOf(up, upX), downs = BoxesOf(down, downX);
        for (var i = 0; i < ups.Count; i++)
        {
            for (var j = 0; j < downs.Count; j++)
            {
                // Heads a second apart may share the stem between them; brackets may not.
                var isSecond = Math.Abs(up.Heads[i].Position - down.Heads[j].Position) == 1 && !up.Heads[i].Note.IsGhost && !down.Heads[j].Note.IsGhost;
                if (Overlap(ups[i], downs[j], isSecond ? 0.16 : 0.02)) return true;
            }
        }
        return downs.Any(d => StemOf(up, upX).Any(s => Overlap(s, d, 0.05))) || ups.Any(u => StemOf(down, downX).Any(s => Overlap(s, u, 0.05)));
    }

    private static bool IsUnison(Slot up, Slot down)
    {
        if (up.Lowest.Position != down.Highest.Position) return false;
        if (up.Lowest.Shape != down.Highest.Shape || up.Event.Value.Dots != down.Event.Value.Dots || up.Lowest.Note.IsGhost || down.Highest.Note.IsGhost) return false;
        return (up.Heads.Length == 1 || up.Heads[1].Position - up.Lowest.Position > 1) && (down.Heads.Length == 1 || down.Highest.Position - down.Heads[^2].Position > 1);
    }

    private List<Box> BoxesOf(Slot slot, double shift)
    {
        var boxes = shapes.BoxesOf(slot.Heads, slot.Shape.HeadX, shapes.WidthOf(slot.Heads));
        for (var i = 0; i < boxes.Count; i++) boxes[i] = boxes[i] with { Left = boxes[i].Left + shift, Right = boxes[i].Right + shift };
        return boxes;
    }

    // The stem outside its own heads, and its flag.
    private IEnumerable<Box> StemOf(Slot slot, double shift)
    {
        if (slot.Stem == StemSide.None) yield break;
        var x = shift + slot.Shape.StemX;
        var tip = Stems.FreeTip(slot.NearTip, slot.Stem, slot.Flags);
        double from = slot.FarFromTip.Y, half = ink.Stem / 2;
        yield return new Box(x - half, Math.Min(from, tip), x + half, Math.Max(from, tip));
        if (StrokesOf(slot, shift) is { } strokes) yield return strokes;
        if (slot.Beam >= 0 || slot.Flags == 0) yield break;
        var flag = ink.Glyph(Signs.FlagOf(slot.Flags, slot.Stem == StemSide.Up), x - half, tip);
        yield return flag;
    }

    // Where tremolo strokes through its stem are.
    private static Box? StrokesOf(Slot slot, double shift)
    {
        if (slot.Stem == StemSide.None || TremoloStrokes.Of(slot) is not (var strokes and > 0)) return null;
        var x = shift + slot.Shape.StemX;
        var start = (slot.Stem == StemSide.Up ? -1 : 1) * TremoloStrokes.FromHead(slot);
        var end = start + (slot.Stem == StemSide.Up ? -1 : 1) * (TremoloStrokes.Height(strokes) + 0.5);
        return new Box(x - TremoloStrokes.HalfWidth, slot.NearTip.Y + Math.Min(start, end), x + TremoloStrokes.HalfWidth, slot.NearTip.Y + Math.Max(start, end));
    }

    private static bool Overlap(Box a, Box b, double allowed) =>
        a.Left < b.Right - allowed && b.Left < a.Right - allowed && a.Top < b.Bottom - 0.05 && b.Top < a.Bottom - 0.05;
}
