using Fretlore.Hands.Grips;

namespace Fretlore.Hands.Placing;

/// <summary>The ways to hold something.</summary>
/// <param name="Presses">What is held, from the low string up.</param>
/// <param name="Ways">The grips; none where no hand can.</param>
/// <param name="Least">What the easiest costs; 0 where there is none.</param>
internal sealed record HeldWays(Press[] Presses, Grip[] Ways, double Least)
{
    public bool IsEmpty => Presses.Length == 0;
}

/// <summary>What the hand can hold, found by a number that says it all: the search asks for the same things over and over.</summary>
internal sealed class HoldTable(GripRules rules)
{
    // Fret, finger, bend and touch of a press.
    private const int BitsOfString = 11;
    private const int MostStrings = 11;

    private static readonly HeldWays Nothing = new([], [], 0);

    private readonly GripFinder finder = new(rules);
    private readonly Dictionary<(UInt128 Presses, int Open), HeldWays> known = [];

    /// <param name="presses">From the low string up.</param>
    /// <param name="open">Bit n is set where string n sounds open.</param>
    public HeldWays Of(ReadOnlySpan<Press> presses, int open)
    {
        if (presses.IsEmpty) return Nothing;
        if (presses[0].String > MostStrings) return Find(presses, open);
        UInt128 key = 0;
        foreach (var press in presses)
        {
            var bits = (uint)press.Fret | (uint)(press.Stated is { } finger ? 1 + (int)finger : 0) << 6 | (press.BendCents >= GripCost.LeastBend ? 1u : 0) << 9 | (press.IsTouched ? 1u : 0) << 10;
            key |= (UInt128)bits << BitsOfString * (press.String - 1);
        }
        if (!known.TryGetValue((key, open), out var ways)) known.Add((key, open), ways = Find(presses, open));
        return ways;
    }

    private HeldWays Find(ReadOnlySpan<Press> presses, int open)
    {
        var hold = new Hold(presses.ToArray(), open) { Capo = rules.Capo };
        var grips = finder.Find(hold);
        var least = grips.Length == 0 ? 0 : double.MaxValue;
        foreach (var grip in grips) least = Math.Min(least, grip.Cost);
        return new HeldWays(hold.Presses, grips, least);
    }
}
