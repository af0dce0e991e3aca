using Fretlore.Hands.Grips;

namespace Fretlore.Hands.Plans;

/// <summary>A way through the moments, cheapest of all.</summary>
/// <param name="Grips">One a moment; null where no hand can hold it.</param>
/// <param name="Cost">Holding and moving together.</param>
internal sealed record FoundPlan(Grip?[] Grips, double Cost);

/// <summary>
/// The cheapest way of a hand through a part: moments are the layers of a graph, grips its nodes, and a move between neighbouring layers has a cost.
/// </summary>
/// <remarks>
/// Dynamic programming over the layers, so the answer is exact: no other choice of fingers and positions costs less. A moment that no hand can hold
/// breaks the part in two; the hand starts anew after it. Memory goes with moments times grips of a moment.
/// </remarks>
internal sealed class PlanSearch(GripRules rules, GripTable table)
{
    public FoundPlan Find(IReadOnlyList<Moment> moments)
    {
        var layers = new Grip[moments.Count][];
        var cameFrom = new ushort[moments.Count][];
        double[] costs = [];
        var found = new Grip?[moments.Count];
        var total = 0.0;
        var start = 0;
        for (var i = 0; i < moments.Count; i++)
        {
            var moment = moments[i];
            var grips = table.Of(moment.Hold);
            layers[i] = grips;
            if (grips.Length == 0)
            {
                total += Trace(layers, cameFrom, costs, found, start, i);
                (start, costs) = (i + 1, []);
                continue;
            }
            costs = Step(i > start ? layers[i - 1] : [], costs, grips, moment, cameFrom[i] = new ushort[grips.Length]);
        }
        total += Trace(layers, cameFrom, costs, found, start, moments.Count);
        return new FoundPlan(found, total);
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
                var cost = costs[from] + MoveCost.Of(before[from], grips[to], moment, rules, []);
                if (cost >= best) continue;
                best = cost;
                cameFrom[to] = checked((ushort)from);
            }
            next[to] = best + grips[to].Cost;
        }
        return next;
    }

    private static double Trace(Grip[][] layers, ushort[][] cameFrom, double[] costs, Grip?[] found, int start, int end)
    {
        if (end == start) return 0;
        var at = 0;
        for (var i = 1; i < costs.Length; i++)
        {
            if (costs[i] < costs[at]) at = i;
        }
        var cost = costs[at];
        for (var i = end - 1; i >= start; i--)
        {
            found[i] = layers[i][at];
            at = cameFrom[i][at];
        }
        return cost;
    }
}
