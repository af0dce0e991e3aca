using Fretlore.Hands.Grips;

namespace Fretlore.Hands.Plans;

/// <summary>A way through the moments, cheapest of all.</summary>
/// <param name="Grips">One a moment; null where no hand can hold it.</param>
/// <param name="Cost">Holding and moving together.</param>
internal sealed record FoundPlan(Grip?[] Grips, double Cost);

/// <summary>A search that was made, kept so that another one of nearly the same moments costs only what differs.</summary>
/// <param name="Moments">The moments it was made for.</param>
/// <param name="Layers">For each moment its grips.</param>
/// <param name="Costs">For each grip what the cheapest way up to it costs, since the last moment that no hand can hold.</param>
/// <param name="CameFrom">For each grip the grip before it on that way.</param>
internal sealed record SearchMade(IReadOnlyList<Moment> Moments, Grip[][] Layers, double[][] Costs, ushort[][] CameFrom);

/// <summary>
/// The cheapest way of a hand through a part: moments are the layers of a graph, grips its nodes, and a move between neighbouring layers has a cost.
/// </summary>
/// <remarks>
/// Dynamic programming over the layers, so the answer is exact: no other choice of fingers and positions costs less. A moment that no hand can hold
/// breaks the part in two; the hand starts anew after it. Memory goes with moments times grips of a moment.
/// </remarks>
internal sealed class PlanSearch(GripRules rules, GripTable table, EffortWeights? weights = null)
{
    // Costs that differ by less are the same: they come of adding in another order.
    private const double SameCost = 1e-9;

    private readonly Dictionary<Grip, double> weighed = new(ReferenceEqualityComparer.Instance);

    public FoundPlan Find(IReadOnlyList<Moment> moments) => Find(moments, null).Plan;

    /// <param name="moments">In order of time.</param>
    /// <param name="before">A search with the same rules and weights; what its moments have in common with these is taken from it.</param>
    public (FoundPlan Plan, SearchMade Made) Find(IReadOnlyList<Moment> moments, SearchMade? before)
    {
        var count = moments.Count;
        var made = new SearchMade(moments, new Grip[count][], new double[count][], new ushort[count][]);
        var (head, tail) = before is null ? (0, 0) : InCommon(moments, before.Moments);
        if (before is not null && head > 0)
        {
            Array.Copy(before.Layers, made.Layers, head);
            Array.Copy(before.Costs, made.Costs, head);
            Array.Copy(before.CameFrom, made.CameFrom, head);
        }
        for (var i = head; i < count; i++)
        {
            var moment = moments[i];
            var grips = made.Layers[i] = table.Of(moment.Hold);
            made.CameFrom[i] = new ushort[grips.Length];
            made.Costs[i] = Step(i > 0 ? made.Layers[i - 1] : [], i > 0 ? made.Costs[i - 1] : [], grips, moment, made.CameFrom[i]);
            if (before is null || count - i > tail) continue;
            var then = before.Moments.Count - count + i;
            if (Offset(made.Costs[i], before.Costs[then]) is not { } offset) continue;
            GoOnAs(before, then, made, i, offset);
            break;
        }
        return (Trace(made), made);
    }

    private static (int Head, int Tail) InCommon(IReadOnlyList<Moment> now, IReadOnlyList<Moment> before)
    {
        var most = Math.Min(now.Count, before.Count);
        var head = 0;
        while (head < most && now[head].IsSearchedAs(before[head])) head++;
        var tail = 0;
        while (tail < most && now[^(tail + 1)].IsSearchedAs(before[^(tail + 1)])) tail++;
        return (head, tail);
    }

    // How much dearer all ways are than they were; null where that is not the same for all, so that another one may win.
    private static double? Offset(double[] now, double[] then)
    {
        if (now.Length != then.Length) return null;
        if (now.Length == 0) return 0;
        var offset = now[0] - then[0];
        for (var i = 1; i < now.Length; i++)
        {
            if (Math.Abs(now[i] - then[i] - offset) > SameCost) return null;
        }
        return offset;
    }

    private static void GoOnAs(SearchMade before, int then, SearchMade made, int now, double offset)
    {
        var left = made.Moments.Count - now - 1;
        Array.Copy(before.Layers, then + 1, made.Layers, now + 1, left);
        Array.Copy(before.CameFrom, then + 1, made.CameFrom, now + 1, left);
        Array.Copy(before.Costs, then + 1, made.Costs, now + 1, left);
        // Up to the next moment that no hand can hold, after which all begins anew.
        for (var i = now + 1; offset != 0 && i < made.Costs.Length && made.Costs[i].Length > 0; i++)
        {
            var costs = made.Costs[i] = [.. made.Costs[i]];
            for (var grip = 0; grip < costs.Length; grip++) costs[grip] += offset;
        }
    }

    private double[] Step(Grip[] before, double[] costs, Grip[] grips, Moment moment, ushort[] cameFrom)
    {
        var next = new double[grips.Length];
        for (var to = 0; to < grips.Length; to++)
        {
            var best = before.Length == 0 ? 0 : double.MaxValue;
            for (var from = 0; from < before.Length; from++)
            {
                // A move costs nothing or more: what is already dearer can't win.
                if (costs[from] >= best) continue;
                var cost = costs[from] + Move(before[from], grips[to], moment);
                if (cost >= best) continue;
                best = cost;
                cameFrom[to] = checked((ushort)from);
            }
            next[to] = best + Holding(grips[to]);
        }
        return next;
    }

    private double Move(Grip from, Grip to, Moment moment)
    {
        if (weights is null) return MoveCost.Of(from, to, moment, rules, []);
        Span<double> parts = stackalloc double[GripCost.EffortCount];
        MoveCost.Of(from, to, moment, rules, parts);
        return weights.Of(parts);
    }

    private double Holding(Grip grip)
    {
        if (weights is null) return grip.Cost;
        if (weighed.TryGetValue(grip, out var known)) return known;
        Span<double> parts = stackalloc double[GripCost.EffortCount];
        GripCost.Of(grip, rules, parts);
        return weighed[grip] = weights.Of(parts);
    }

    private static FoundPlan Trace(SearchMade made)
    {
        var found = new Grip?[made.Moments.Count];
        var total = 0.0;
        var at = -1;
        for (var i = found.Length - 1; i >= 0; i--)
        {
            if (made.Layers[i].Length == 0)
            {
                at = -1;
                continue;
            }
            if (at < 0)
            {
                at = Array.IndexOf(made.Costs[i], made.Costs[i].Min());
                total += made.Costs[i][at];
            }
            found[i] = made.Layers[i][at];
            at = made.CameFrom[i][at];
            if (i > 0 && made.Layers[i - 1].Length == 0) at = -1;
        }
        return new FoundPlan(found, total);
    }
}
