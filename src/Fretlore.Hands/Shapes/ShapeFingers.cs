using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Hands.Grips;
using Fretlore.Score;

namespace Fretlore.Hands.Shapes;

/// <summary>The easiest fingers for a shape by itself.</summary>
public static class ShapeFingers
{
    /// <summary>The fingers the sheet states for a shape, with the easiest for the strings it says nothing of.</summary>
    public static ImmutableArray<Finger?>? Of(NamedShape shape, HandSize size = HandSize.Average) =>
        Find(shape.Shape, shape.Neck, shape.FingerOf, size) ?? (shape.Fingers.Count > 0 ? [.. shape.Fingers] : null);

    /// <summary>For each string from the low one the finger that holds it, null where it is open or silent; nothing at all where no hand holds the shape.</summary>
    public static ImmutableArray<Finger?>? Of(Shape shape, Neck neck, HandSize size = HandSize.Average) => Find(shape, neck, (_, _) => null, size);

    private static ImmutableArray<Finger?>? Find(Shape shape, Neck neck, Func<StringNumber, Fret, Finger?> stated, HandSize size)
    {
        var presses = new List<Press>();
        var open = 0;
        foreach (var (number, fret, _) in shape.On(neck))
        {
            if (fret.IsOpen) open |= 1 << number.Value;
            else if (!neck.Has(number, fret)) return null;
            else presses.Add(new Press(number.Value, fret.Number, stated(number, fret)));
        }
        var fingers = new Finger?[shape.LowToHigh.Count];
        if (presses.Count == 0) return [.. fingers];
        if (new GripFinder(new GripRules(NeckGeometry.Of(neck), size)).Find(new Hold([.. presses], open) { Capo = neck.Capo }).MinBy(grip => grip.Cost) is not { } grip) return null;
        for (var i = 0; i < presses.Count; i++) fingers[fingers.Length - presses[i].String] = grip.Fingers[i];
        return [.. fingers];
    }
}
