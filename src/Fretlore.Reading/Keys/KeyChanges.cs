using Fretlore.Music;
using Fretlore.Music.Keys;
using Fretlore.Score;

namespace Fretlore.Reading.Keys;

/// <summary>Finds the bars where music that states no key goes over to another set of seven notes.</summary>
/// <remarks>
/// Each of the twelve signatures gives each pitch class a probability: the mean of its major and its minor key in the profile. The cheapest path
/// through the bars is found by dynamic programming (Viterbi); a change costs as much as several bars that fit worse. Cost grows with the bars.
/// </remarks>
internal static class KeyChanges
{
    // In natural logarithms of probability, where a bar counts as one note drawn from the profile.
    private const double Change = 4;

    // What a bar away from the signature of the whole costs, so that a song returns home rather than drifts.
    private const double AwayFromHome = 0.05;

    private static readonly double[] Costs = NoteCosts();

    /// <summary>Where stretches begin, the first bar included.</summary>
    /// <param name="parts">What each part plays.</param>
    /// <param name="first">Index of the first bar.</param>
    /// <param name="end">Index after the last.</param>
    /// <param name="home">The key of all of it together.</param>
    internal static List<int> Find(IReadOnlyList<ValueList<PartBar>> parts, int first, int end, Key home)
    {
        Span<double> totals = stackalloc double[12];
        totals.Clear();
        var homePlace = NoteName.Wrap(home.Signature * 7, 12);
        var from = new int[end - first, 12];
        for (var bar = first; bar < end; bar++)
        {
            var best = Cheapest(totals, homePlace);
            var weights = new BarWeights();
            foreach (var part in parts)
            {
                if (bar < part.Count) weights.Add(part[bar]);
            }
            var least = totals[best];
            for (var signature = 0; signature < 12; signature++)
            {
                var changes = bar > first && totals[signature] > least + Change;
                from[bar - first, signature] = changes ? best : signature;
                if (changes) totals[signature] = least + Change;
                if (signature != homePlace) totals[signature] += AwayFromHome;
                for (var degree = 0; degree < 12; degree++) totals[signature] += weights.Notes.Share((signature + degree) % 12) * Costs[degree];
            }
        }
        return Starts(from, Cheapest(totals, homePlace), first, end);
    }

    // Of equals the first from home up, so that the path moves along when everything is transposed.
    private static int Cheapest(ReadOnlySpan<double> totals, int home)
    {
        var best = home;
        for (var above = 1; above < 12; above++)
        {
            if (totals[(home + above) % 12] < totals[best]) best = (home + above) % 12;
        }
        return best;
    }

    private static List<int> Starts(int[,] from, int at, int first, int end)
    {
        var starts = new List<int>();
        for (var bar = end - 1; bar > first; bar--)
        {
            var before = from[bar - first, at];
            if (before != at) starts.Add(bar);
            at = before;
        }
        starts.Add(first);
        starts.Reverse();
        return starts;
    }

    // Of semitones above the major tonic of a signature.
    private static double[] NoteCosts()
    {
        var costs = new double[12];
        for (var degree = 0; degree < 12; degree++)
        {
            costs[degree] = -Math.Log((KeyProfile.BellmanBudge.Share(degree, false) + KeyProfile.BellmanBudge.Share((degree + 3) % 12, true)) / 2);
        }
        return costs;
    }
}
