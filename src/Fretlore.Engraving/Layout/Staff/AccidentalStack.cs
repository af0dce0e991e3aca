using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Sets the accidentals of one moment left of its heads, of one voice or several.</summary>
/// <remarks>Highest first, then lowest, then the next highest and so on inwards (Gould); each goes as far right as its ink allows.</remarks>
internal static class AccidentalStack
{
    private const double Gap = 0.22;
    private const double Kerning = 0.12;

    /// <param name="ink">Fonts.</param>
    /// <param name="heads">Low to high.</param>
    /// <param name="boxes">What must be kept clear of; the accidentals are added.</param>
    /// <param name="left">The leftmost ink; moved out where an accidental reaches further.</param>
    /// <returns>The origin of each head's accidental; not a number where there is none.</returns>
    public static ImmutableArray<double> Place(Ink ink, ReadOnlySpan<Head> heads, List<Box> boxes, ref double left)
    {
        var x = new double[heads.Length];
        Array.Fill(x, double.NaN);
        var unplaced = new List<int>();
        for (var i = 0; i < heads.Length; i++)
        {
            if (heads[i].Accidental is not null) unplaced.Add(i);
        }
        var fromTop = true;
        while (unplaced.Count > 0)
        {
            var i = fromTop ? unplaced[^1] : unplaced[0];
            unplaced.Remove(i);
            fromTop = !fromTop;
            var sign = ink.Glyph(Signs.AccidentalOf(heads[i].Accidental!.Value), 0, heads[i].Y);
            var limit = LimitOf(sign, boxes);
            x[i] = limit - sign.Right;
            boxes.Add(new Box(x[i] + sign.Left, sign.Top, limit, sign.Bottom));
            left = Math.Min(left, x[i] + sign.Left);
        }
        return ImmutableCollectionsMarshal.AsImmutableArray(x);
    }

    // How far right its right edge may be.
    private static double LimitOf(Box sign, List<Box> boxes)
    {
        var limit = -Gap;
        for (var moved = true; moved;)
        {
            moved = false;
            foreach (var box in boxes)
            {
                if (box.Top >= sign.Bottom + 0.05 || box.Bottom <= sign.Top - 0.05) continue;
                var gap = box.Right > 0 ? Gap : Kerning;
                if (limit <= box.Left - gap + 1e-9 || limit - (sign.Right - sign.Left) >= box.Right + Kerning) continue;
                limit = box.Left - gap;
                moved = true;
            }
        }
        return limit;
    }
}
