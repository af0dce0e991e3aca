using Fretlore.Guitar;
using Fretlore.Hands.Grips;

namespace Fretlore.Hands.Shapes;

/// <summary>Whether a hand can hold a shape at all.</summary>
public static class ShapeReach
{
    /// <summary>True when some fingering stops every fret of the shape at once and leaves its open strings free; a fret that the neck has not, no hand holds.</summary>
    /// <param name="shape">Its frets are written under the neck's capo.</param>
    /// <param name="neck">The neck, whose scale length decides how far frets are apart.</param>
    /// <param name="size">The hand.</param>
    public static bool CanBeHeld(Shape shape, Neck neck, HandSize size = HandSize.Average)
    {
        var presses = new List<Press>();
        var open = 0;
        foreach (var (number, fret, _) in shape.On(neck))
        {
            if (fret.IsOpen) open |= 1 << number.Value;
            else if (!neck.Has(number, fret)) return false;
            else presses.Add(new Press(number.Value, fret.Number));
        }
        if (presses.Count == 0) return true;
        presses.Sort((a, b) => b.String.CompareTo(a.String));
        return new GripFinder(new GripRules(NeckGeometry.Of(neck), size)).Find(new Hold([.. presses], open) { Capo = neck.Capo }).Length > 0;
    }
}
