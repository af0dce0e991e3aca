using System.Collections.Immutable;
using System.Numerics;

namespace Fretlore.Lesson.Plans;

/// <summary>Puts steps in the order that costs a learner least.</summary>
/// <remarks>
/// Exact: dynamic programming over the sets of steps taught so far and the last of them (Held and Karp). It costs to teach a pair of steps against the order of the
/// song, more to teach a harder one before an easier one, and most to change necks in between. What a step needs always comes first. Where there are more than
/// <see cref="MostSearched"/> steps, they stay in the order of the song, each after what it needs.
/// </remarks>
internal static class StepOrder
{
    public const int MostSearched = 13;

    // By judgement: a change of neck outweighs a few pairs in the wrong order.
    private const int AgainstSong = 1, HarderFirst = 2, NeckChange = 6;

    /// <param name="steps">In the order of the song: how hard each is (0 to 4), its neck, and the steps it needs by index.</param>
    /// <returns>Indexes in teaching order.</returns>
    public static ImmutableArray<int> Of(IReadOnlyList<(int Difficulty, int Neck, ImmutableArray<int> Needs)> steps) =>
        steps.Count > MostSearched ? InSongOrder(steps) : Search(steps);

    /// <summary>What an order costs; it is sound only if every step comes after what it needs.</summary>
    internal static int Cost(IReadOnlyList<(int Difficulty, int Neck, ImmutableArray<int> Needs)> steps, IReadOnlyList<int> order)
    {
        var cost = 0;
        for (var at = 0; at < order.Count; at++)
        {
            for (var before = 0; before < at; before++) cost += Pair(steps, order[before], order[at]);
            if (at > 0) cost += Change(steps, order[at - 1], order[at]);
        }
        return cost;
    }

    private static int Pair(IReadOnlyList<(int Difficulty, int Neck, ImmutableArray<int> Needs)> steps, int first, int second) =>
        (first > second ? AgainstSong : 0) + HarderFirst * Math.Max(0, steps[first].Difficulty - steps[second].Difficulty);

    private static int Change(IReadOnlyList<(int Difficulty, int Neck, ImmutableArray<int> Needs)> steps, int from, int to) =>
        steps[from].Neck != steps[to].Neck ? NeckChange : 0;

    private static ImmutableArray<int> Search(IReadOnlyList<(int Difficulty, int Neck, ImmutableArray<int> Needs)> steps)
    {
        var (count, sets) = (steps.Count, 1 << steps.Count);
        if (count == 0) return [];
        var cost = new int[sets * count];
        var from = new sbyte[sets * count];
        Array.Fill(cost, int.MaxValue);
        for (var set = 1; set < sets; set++)
        {
            for (var last = 0; last < count; last++)
            {
                if ((set >> last & 1) == 0) continue;
                var before = set & ~(1 << last);
                if (steps[last].Needs.Any(need => (before >> need & 1) == 0)) continue;
                var pairs = Enumerable.Range(0, count).Where(i => (before >> i & 1) == 1).Sum(i => Pair(steps, i, last));
                if (before == 0) (cost[set * count + last], from[set * count + last]) = (0, -1);
                for (var i = 0; i < count && before != 0; i++)
                {
                    if ((before >> i & 1) == 0 || cost[before * count + i] == int.MaxValue) continue;
                    var sum = cost[before * count + i] + pairs + Change(steps, i, last);
                    if (sum < cost[set * count + last]) (cost[set * count + last], from[set * count + last]) = (sum, (sbyte)i);
                }
            }
        }
        var all = sets - 1;
        var end = Enumerable.Range(0, count).MinBy(i => cost[all * count + i]);
        var order = new int[count];
        for (int set = all, at = BitOperations.PopCount((uint)all) - 1; at >= 0; at--)
        {
            order[at] = end;
            (set, end) = (set & ~(1 << end), from[set * count + end]);
        }
        return [.. order];
    }

    private static ImmutableArray<int> InSongOrder(IReadOnlyList<(int Difficulty, int Neck, ImmutableArray<int> Needs)> steps)
    {
        var order = ImmutableArray.CreateBuilder<int>(steps.Count);
        var done = new bool[steps.Count];
        for (var i = 0; i < steps.Count; i++) Add(i);
        return order.ToImmutable();

        void Add(int step)
        {
            if (done[step]) return;
            done[step] = true;
            foreach (var need in steps[step].Needs) Add(need);
            order.Add(step);
        }
    }
}
