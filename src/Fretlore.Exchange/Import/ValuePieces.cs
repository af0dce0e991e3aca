using System.Collections.Immutable;
using Fretlore.Music;

namespace Fretlore.Exchange.Import;

/// <summary>Cuts lengths into note values.</summary>
internal static class ValuePieces
{
    private const int LargestTuplet = 32;

    private static readonly ImmutableArray<ValueBase> Bases = [.. Enum.GetValues<ValueBase>()];

    // The values with and without a dot, the longest first.
    private static readonly ImmutableArray<NoteValue> LongestFirst =
        [.. Bases.SelectMany(b => b == ValueBase.SixtyFourth ? [new NoteValue(b)] : new[] { new NoteValue(b, 1), new NoteValue(b) })];

    /// <summary>The shortest value that is written, a 64th.</summary>
    public static Beats Shortest => Beats.Of(1, 16);

    /// <summary>True for a length that is so many 64ths.</summary>
    public static bool IsPlain(Beats length) => Shortest.Denominator % length.Denominator == 0;

    /// <summary>Values that add up to a length, the longest first; empty when there are none.</summary>
    public static IReadOnlyList<(NoteValue Value, Tuplet? Tuplet)> Of(Beats length)
    {
        if (length <= Beats.Zero) return [];
        if (IsPlain(length)) return Plain(length);
        if (AsTuplet(length) is { } tuplet) return [tuplet];
        // A plain part first, and the odd rest as a tuplet of its own.
        var plain = Shortest * length.WholeCount(Shortest);
        var rest = length - plain;
        if (AsTuplet(rest) is { } last) return [.. Plain(plain), last];
        return Plain(plain);
    }

    /// <summary>The nearest length from which values can be made, at least a 64th.</summary>
    public static Beats Rounded(Beats length) => Beats.Max(Shortest, Shortest * (length + Shortest / 2).WholeCount(Shortest));

    private static List<(NoteValue, Tuplet?)> Plain(Beats length)
    {
        var pieces = new List<(NoteValue, Tuplet?)>();
        while (length > Beats.Zero)
        {
            var value = Longest(length);
            pieces.Add((value, null));
            length -= value.Length;
        }
        return pieces;
    }

    private static NoteValue Longest(Beats length)
    {
        foreach (var value in LongestFirst)
        {
            if (value.Length <= length) return value;
        }
        return LongestFirst[^1];
    }

    // The tuplet with the smallest numbers, on the value nearest in length.
    private static (NoteValue Value, Tuplet? Tuplet)? AsTuplet(Beats length)
    {
        (NoteValue, Tuplet?)? best = null;
        var cost = long.MaxValue;
        foreach (var unit in Bases)
        {
            foreach (var dots in (ReadOnlySpan<int>)[0, 1])
            {
                if (unit == ValueBase.SixtyFourth && dots > 0) continue;
                var factor = length / new NoteValue(unit, dots).Length;
                var (inTimeOf, count) = (factor.Numerator, factor.Denominator);
                if (count == 1) (inTimeOf, count) = (inTimeOf * 2, 2);
                if (count is < 2 or > LargestTuplet || inTimeOf is < 1 or > LargestTuplet || count == inTimeOf || inTimeOf > 4 * count || count > 4 * inTimeOf) continue;
                // Three in the time of two is usual, three in the time of one or of four is not.
                var price = count * inTimeOf * (factor > Beats.Of(1) || count >= 2 * inTimeOf ? 3 : 1) + dots;
                if (price >= cost) continue;
                (best, cost) = ((new NoteValue(unit, dots), new Tuplet((int)count, (int)inTimeOf, unit)), price);
            }
        }
        return best;
    }
}
