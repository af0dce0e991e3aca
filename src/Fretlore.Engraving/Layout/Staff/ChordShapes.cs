using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Sets the heads, accidentals and dots of a chord beside each other so that none touch.</summary>
internal sealed class ChordShapes(Ink ink)
{
    private const double DotGap = 0.45;
    private const double DotBelowFlag = 0.3;
    private const double FlagReach = 0.9;
    private const double GhostRoom = 0.5;
    private const double GhostHeight = 0.45;

    // Most chords are single notes, and a song has few that look different.
    private readonly Dictionary<(HeadShape, int Position, int? Accidental, bool IsGhost, StemSide, int Dots, int Flags, bool LowerVoice), ChordShape> singles = [];

    /// <param name="heads">Low to high.</param>
    /// <param name="stem">The stem's side; none for whole notes.</param>
    /// <param name="dots">Augmentation dots.</param>
    /// <param name="flags">Flags when the note stands alone, else 0.</param>
    /// <param name="lowerVoice">Whether dots on lines go down rather than up.</param>
    public ChordShape Of(ImmutableArray<Head> heads, StemSide stem, int dots, int flags, bool lowerVoice)
    {
        if (heads.Length == 0) return ChordShape.Empty;
        if (heads.Length > 1) return Set(heads, stem, dots, flags, lowerVoice);
        var key = (heads[0].Shape, heads[0].Position, heads[0].Accidental, heads[0].Note.IsGhost, stem, dots, flags, lowerVoice);
        if (!singles.TryGetValue(key, out var shape)) singles[key] = shape = Set(heads, stem, dots, flags, lowerVoice);
        return shape;
    }

    private ChordShape Set(ImmutableArray<Head> heads, StemSide stem, int dots, int flags, bool lowerVoice)
    {
        double width = 0;
        foreach (var head in heads) width = Math.Max(width, ink.GlyphWidth(Signs.GlyphOf(head.Shape)));
        var stemX = stem == StemSide.Down ? ink.Stem / 2 : width - ink.Stem / 2;
        var headX = Displaced(heads, stem, width);
        var boxes = BoxesOf(heads, headX, width);
        double left = 0, right = 0;
        foreach (var box in boxes)
        {
            left = Math.Min(left, box.Left);
            right = Math.Max(right, box.Right);
        }
        // Dots stand by the heads and their brackets; ledger lines end under them.
        var placedDots = dots == 0 ? [] : Dots(heads, dots, headX.Max() + width + (heads.Any(h => h.Note.IsGhost) ? GhostRoomOf(heads) : 0), lowerVoice);
        if (placedDots.Length > 0 && flags > 0 && stem == StemSide.Up) placedDots = ClearOfFlag(placedDots, heads[^1], flags, stemX);
        if (placedDots.Length > 0) right = Math.Max(right, placedDots.Max(d => d.X) + 0.4);
        if (flags > 0 && stem == StemSide.Up) right = Math.Max(right, stemX + FlagReach);
        var accidentals = AccidentalStack.Place(ink, heads.AsSpan(), boxes, ref left);
        return new ChordShape(headX, accidentals, placedDots, stemX, left, right);
    }

    /// <summary>The ink of heads, with the brackets of ghost notes, which stand outside all heads, and ledger lines where there are several.</summary>
    public List<Box> BoxesOf(ImmutableArray<Head> heads, ImmutableArray<double> headX, double width)
    {
        var boxes = new List<Box>(heads.Length * 2);
        var ghostRoom = GhostRoomOf(heads);
        for (var i = 0; i < heads.Length; i++)
        {
            var box = ink.Glyph(Signs.GlyphOf(heads[i].Shape), headX[i], heads[i].Y);
            if (heads[i].Note.IsGhost) box = new Box(headX.Min() - ghostRoom, box.Top - GhostHeight, headX.Max() + width + ghostRoom, box.Bottom + GhostHeight);
            if (Math.Abs(heads[i].Position - 4) > 5) box = box with { Left = box.Left - ink.LedgerExtension, Right = box.Right + ink.LedgerExtension };
            boxes.Add(box);
        }
        return boxes;
    }

    // A pair of brackets around several ghost notes is larger.
    private static double GhostRoomOf(ImmutableArray<Head> heads) => heads.Count(h => h.Note.IsGhost) > 1 ? 2 * GhostRoom : GhostRoom;

    /// <summary>The widest head of a chord.</summary>
    public double WidthOf(ImmutableArray<Head> heads) => heads.Max(h => ink.GlyphWidth(Signs.GlyphOf(h.Shape)));

    // Dots beside a flag stand right of it (Gould).
    private ImmutableArray<(double X, int Position)> ClearOfFlag(ImmutableArray<(double X, int Position)> dots, Head highest, int flags, double stemX)
    {
        var flag = ink.Glyph(Signs.FlagOf(flags, true));
        var end = Stems.FreeTip(highest, StemSide.Up, flags) + flag.Bottom;
        if (dots.All(d => 4 - d.Position / 2.0 > end + DotBelowFlag)) return dots;
        var shift = Math.Max(0, stemX + flag.Right + DotGap / 2 - dots.Min(d => d.X));
        return [.. dots.Select(d => (d.X + shift, d.Position))];
    }

    // Gould: in a second the upper head stands right of the stem; counted from the stem's foot so that clusters alternate. A unison on two
    // strings takes the second place too, and a third note beside both a third place.
    private ImmutableArray<double> Displaced(ImmutableArray<Head> heads, StemSide stem, double width)
    {
        var place = new int[heads.Length];
        var offset = (width - ink.Stem) * (stem == StemSide.Down ? -1 : 1);
        for (var n = 0; n < heads.Length; n++)
        {
            var i = stem == StemSide.Down ? heads.Length - 1 - n : n;
            for (var m = 0; m < n; m++)
            {
                var before = stem == StemSide.Down ? heads.Length - 1 - m : m;
                if (place[before] != place[i] || Math.Abs(heads[before].Position - heads[i].Position) > 1) continue;
                place[i]++;
                m = -1;
            }
        }
        var x = new double[place.Length];
        for (var i = 0; i < x.Length; i++) x[i] = place[i] * offset;
        return ImmutableCollectionsMarshal.AsImmutableArray(x);
    }

    private ImmutableArray<(double X, int Position)> Dots(ImmutableArray<Head> heads, int dots, double right, bool lowerVoice)
    {
        if (dots == 0) return [];
        var taken = new SortedSet<int>();
        for (var i = heads.Length - 1; i >= 0; i--)
        {
            var position = heads[i].Position;
            if (position % 2 == 0) position += lowerVoice && heads.Length == 1 ? -1 : 1;
            if (!taken.Add(position) && !taken.Add(position - 2)) taken.Add(position + 2);
        }
        var placed = ImmutableArray.CreateBuilder<(double, int)>();
        foreach (var position in taken)
        {
            for (var k = 0; k < dots; k++) placed.Add((right + DotGap - 0.15 + k * (ink.GlyphWidth(Smufl.AugmentationDot) + 0.25), position));
        }
        return placed.ToImmutable();
    }
}
