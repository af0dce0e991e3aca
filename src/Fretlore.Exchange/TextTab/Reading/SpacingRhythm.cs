using Fretlore.Music;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>Times for the notes of a bar, worked out from how far apart they stand.</summary>
/// <param name="Starts">From the bar's start, one a moment, each later than the one before.</param>
/// <param name="Cost">How much of it does not fit: the mean square of the distances in characters, and something for rare divisions.</param>
/// <param name="IsUneven">True when the notes stand too unevenly to be sure of anything.</param>
internal sealed record SpacedRhythm(Beats[] Starts, double Cost, bool IsUneven);

/// <summary>Reads rhythm from spacing: the bar's width is its length, and each beat is divided as its notes stand best.</summary>
internal static class SpacingRhythm
{
    // Beyond this mean square distance, in characters, a rhythm is a guess (from looking at typed tab).
    private const double Uneven = 0.2;

    private const double OddPlace = 0.12;

    // Less than any two times of a bar are apart.
    private const double Nearest = 1e-6;

    // What a division of a beat costs beside the distances: halves and quarters come by themselves, triplets have to be meant.
    private static readonly (int Parts, double Cost)[] Simple = [(1, 0), (2, 0.02), (4, 0.08), (3, 0.3), (6, 0.5), (8, 0.35)];
    private static readonly (int Parts, double Cost)[] Compound = [(1, 0), (3, 0.02), (6, 0.08), (12, 0.35), (2, 0.6), (4, 0.7)];

    /// <summary>Times for moments that stand at columns of a bar.</summary>
    /// <param name="columns">Rising; at least one.</param>
    /// <param name="width">Characters between the bar lines.</param>
    /// <param name="meter">The bar's metre.</param>
    /// <param name="known">The column of the bar's first beat, where it is known.</param>
    public static SpacedRhythm Of(IReadOnlyList<int> columns, int width, Meter meter, int? known = null)
    {
        var (beats, metre, best, lowest) = (BeatsOf(meter), meter.Length.ToDouble(), (Beats[]?)null, double.MaxValue);
        var usual = UsualGap(columns);
        foreach (var (pad, padCost) in known is { } first ? [(first, 0.0)] : Pads(columns[0]))
        {
            // The last note's dashes are often fewer than its length, seldom more.
            for (var cut = known is null ? -2 : 0; cut <= (known is null ? usual + 1 : 0); cut++)
            {
                var room = width - pad + cut;
                if (room <= columns[^1] - pad) continue;
                var price = padCost + 0.1 * Math.Min(3, Math.Abs(cut));
                if (price >= lowest || Fit(columns, pad, room, metre, beats, lowest - price) is not var (starts, cost)) continue;
                (best, lowest) = (starts, cost + price);
            }
        }
        return best is null ? InOrder(columns, width, meter) : new SpacedRhythm(best, lowest / columns.Count, lowest / columns.Count > Uneven);
    }

    /// <summary>The distance that most neighbours have.</summary>
    public static int UsualGap(IReadOnlyList<int> columns) => columns.Count < 2
        ? 2
        : Enumerable.Range(1, columns.Count - 1).Select(i => columns[i] - columns[i - 1]).GroupBy(g => g).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).First().Key;

    // How many characters stand before the first beat: as many as before the first note, or the usual few when that comes later.
    private static IEnumerable<(int Pad, double Cost)> Pads(int first)
    {
        yield return (first, first <= 2 ? 0 : first <= 4 ? 0.15 : 1.5);
        for (var pad = 0; pad <= 3 && pad < first; pad++) yield return (pad, (pad == 1 ? 0.25 : 0.4) + (first <= 3 ? 1 : 0));
    }

    /// <summary>A beat of a metre, its times also as numbers: the search tries thousands of places.</summary>
    private readonly record struct Beat(Beats Start, Beats Length, double From, double Span, bool IsCompound);

    private static List<Beat> BeatsOf(Meter meter)
    {
        var list = new List<Beat>();
        var at = Beats.Zero;
        foreach (var group in meter.Groups)
        {
            var length = Beats.Of(4, meter.Unit) * group;
            list.Add(new Beat(at, length, at.ToDouble(), length.ToDouble(), group % 3 == 0 && meter.Unit >= 8));
            at += length;
        }
        return list;
    }

    private static (Beats[] Starts, double Cost)? Fit(IReadOnlyList<int> columns, int pad, int room, double metre, List<Beat> beats, double most)
    {
        var perQuarter = room / metre;
        Span<int> divisions = stackalloc int[beats.Count];
        Span<int> ends = stackalloc int[beats.Count];
        var (next, total, last) = (0, 0.0, -1.0);
        for (var b = 0; b < beats.Count; b++)
        {
            var (from, beat) = (next, beats[b]);
            // A note that stands half a character before a beat belongs to it.
            var end = (beat.From + beat.Span) * perQuarter - 0.5;
            while (next < columns.Count && columns[next] - pad < end) next++;
            (ends[b], divisions[b]) = (next, 0);
            if (next == from) continue;
            var bestCost = double.MaxValue;
            foreach (var (parts, price) in beat.IsCompound ? Compound : Simple)
            {
                if (price >= bestCost) continue;
                var cost = price + Distance(columns, from, next, pad, perQuarter, beat, parts, last, bestCost - price);
                if (cost < bestCost) (bestCost, divisions[b]) = (cost, parts);
            }
            if (divisions[b] == 0) return null;
            last = beat.From + beat.Span / divisions[b] * Slot(columns[next - 1], pad, perQuarter, beat, divisions[b]);
            total += bestCost;
            if (total >= most) return null;
        }
        return next == columns.Count ? (Starts(columns, pad, perQuarter, beats, ends, divisions), total) : null;
    }

    private static Beats[] Starts(IReadOnlyList<int> columns, int pad, double perQuarter, List<Beat> beats, ReadOnlySpan<int> ends, ReadOnlySpan<int> divisions)
    {
        var starts = new Beats[columns.Count];
        for (var (b, i) = (0, 0); b < beats.Count; b++)
        {
            for (; i < ends[b]; i++) starts[i] = beats[b].Start + beats[b].Length / divisions[b] * Slot(columns[i], pad, perQuarter, beats[b], divisions[b]);
        }
        return starts;
    }

    private static int Slot(int column, int pad, double perQuarter, in Beat beat, int parts)
    {
        var place = ((column - pad) / perQuarter - beat.From) / beat.Span * parts;
        return Math.Clamp((int)Math.Round(place, MidpointRounding.AwayFromZero), 0, parts - 1);
    }

    // Once it is known to be no better than another division, the rest does not matter.
    private static double Distance(IReadOnlyList<int> columns, int from, int to, int pad, double perQuarter, in Beat beat, int parts, double last, double most)
    {
        var (sum, before, slotBefore) = (0.0, last, -1);
        for (var i = from; i < to; i++)
        {
            var slot = Slot(columns[i], pad, perQuarter, beat, parts);
            if (slot == slotBefore) return double.MaxValue;
            var at = beat.From + beat.Span / parts * slot;
            if (at <= before + Nearest) return double.MaxValue;
            // A note on an odd 16th that follows no other at once is rarer than its neighbours.
            if (slot % 2 == 1 && slotBefore != slot - 1) sum += OddPlace;
            slotBefore = slot;
            var off = columns[i] - pad - at * perQuarter;
            sum += off * off;
            if (sum >= most) return double.MaxValue;
            before = at;
        }
        return sum;
    }

    // Where nothing fits, one after another on the grid that has room for them all.
    private static SpacedRhythm InOrder(IReadOnlyList<int> columns, int width, Meter meter)
    {
        var step = Beats.Of(1, 4);
        while ((meter.Length / step).ToDouble() < columns.Count && step.Denominator < 16) step /= 2;
        if ((meter.Length / step).ToDouble() < columns.Count) step = meter.Length / columns.Count;
        var slots = (int)(meter.Length / step).WholeCount(Beats.Of(1));
        var starts = new Beats[columns.Count];
        var slot = -1;
        for (var i = 0; i < columns.Count; i++)
        {
            var near = (int)((columns[i] - columns[0]) * (double)slots / Math.Max(1, width - columns[0]));
            slot = Math.Clamp(near, slot + 1, slots - (columns.Count - i));
            starts[i] = step * slot;
        }
        return new SpacedRhythm(starts, 1, true);
    }
}
