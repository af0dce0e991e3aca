using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Score;

namespace Fretlore.Hands.Shapes;

/// <summary>The easiest fingers for a shape by itself.</summary>
public static class ShapeFingers
{
    /// <summary>For each string from the low one the finger that holds it, null where it is open or silent; nothing at all where no hand holds the shape.</summary>
    public static ImmutableArray<Finger?>? Of(Shape shape, Neck neck, HandSize size = HandSize.Average)
    {
        var presses = new List<Press>();
        var open = 0;
        foreach (var (number, fret, _) in shape.On(neck))
        {
            if (fret.IsOpen) open |= 1 << number.Value;
            else presses.Add(new Press(number.Value, fret.Number));
        }
        var fingers = new Finger?[shape.LowToHigh.Count];
        if (presses.Count == 0) return [.. fingers];
        if (new GripFinder(new GripRules(NeckGeometry.Of(neck), size)).Find(new Hold([.. presses], open)).MinBy(grip => grip.Cost) is not { } grip) return null;
        for (var i = 0; i < presses.Count; i++) fingers[fingers.Length - presses[i].String] = grip.Fingers[i];
        return [.. fingers];
    }
}
