namespace Fretlore.Hands.Picking;

/// <summary>The picking fingers that cost least over a whole line, by dynamic programming over all ways to pluck each moment: exact.</summary>
internal static class FingerSearch
{
    /// <summary>Thumb, index, middle and ring finger, as players write them.</summary>
    private const string Letters = "pima";

    /// <summary>For each moment the fingers of its strings, from the low string; null where there are more strings than fingers, which the thumb or a nail brushes over.</summary>
    public static string?[] Find(IReadOnlyList<PluckedMoment> moments)
    {
        var found = new string?[moments.Count];
        var (ways, cameFrom) = (new string[moments.Count][], new int[moments.Count][]);
        double[] costs = [];
        var start = 0;
        for (var i = 0; i < moments.Count; i++)
        {
            ways[i] = [.. WaysOf(moments[i])];
            if (ways[i].Length == 0)
            {
                Trace(ways, cameFrom, costs, found, start, i);
                (start, costs) = (i + 1, []);
                continue;
            }
            cameFrom[i] = new int[ways[i].Length];
            var next = new double[ways[i].Length];
            for (var to = 0; to < next.Length; to++)
            {
                var best = costs.Length == 0 ? 0 : double.MaxValue;
                for (var from = 0; from < costs.Length; from++)
                {
                    var cost = costs[from] + Change(moments[i - 1], ways[i - 1][from], moments[i], ways[i][to]);
                    if (cost >= best) continue;
                    (best, cameFrom[i][to]) = (cost, from);
                }
                next[to] = best + Alone(moments[i], ways[i][to]);
            }
            costs = next;
        }
        Trace(ways, cameFrom, costs, found, start, moments.Count);
        return found;
    }

    private static void Trace(string[][] ways, int[][] cameFrom, double[] costs, string?[] found, int start, int end)
    {
        if (end == start) return;
        var at = Array.IndexOf(costs, costs.Min());
        for (var i = end - 1; i >= start; i--)
        {
            found[i] = ways[i][at];
            at = cameFrom[i][at];
        }
    }

    /// <summary>All choices of fingers in order, one a string, the thumb lowest; those the sheet says are kept where they can be.</summary>
    public static IEnumerable<string> WaysOf(PluckedMoment moment)
    {
        var count = moment.Strings.Length;
        if (count > Letters.Length) return [];
        var all = Enumerable.Range(0, 1 << Letters.Length).Where(set => int.PopCount(set) == count)
            .Select(set => string.Concat(Letters.Where((_, finger) => (set >> finger & 1) != 0))).ToList();
        var stated = all.Where(way => Enumerable.Range(0, count).All(i => moment.Strings[i].Stated is not { } said || count > 1 || way[i] == said)).ToList();
        return stated.Count > 0 ? stated : all;
    }

    public static double Alone(PluckedMoment moment, string way)
    {
        var cost = 0.0;
        for (var i = 0; i < way.Length; i++)
        {
            var number = moment.Strings[i].Note.String.Value;
            if (way[i] == 'p') cost += PickingCosts.ThumbUp * Math.Max(0, 4 - number);
            else
            {
                cost += PickingCosts.AwayFromRest * Math.Abs(number - RestOf(way[i])) + PickingCosts.FingerDown * Math.Max(0, number - 3);
                if (moment.Strings[i].IsBass) cost += PickingCosts.BassWithoutThumb;
            }
        }
        return cost;
    }

    public static double Change(PluckedMoment before, string from, PluckedMoment after, string to)
    {
        var cost = 0.0;
        for (var i = 0; i < to.Length; i++)
        {
            var number = after.Strings[i].Note.String.Value;
            for (var k = 0; k < from.Length; k++)
            {
                var other = before.Strings[k].Note.String.Value;
                if (from[k] == to[i]) cost += PickingCosts.InHaste(to[i] == 'p' ? PickingCosts.SameThumb : PickingCosts.SameFinger, after.SinceBefore);
                else if (Letters.IndexOf(from[k], StringComparison.Ordinal) < Letters.IndexOf(to[i], StringComparison.Ordinal) && other < number) cost += PickingCosts.InHaste(PickingCosts.CrossedOver, after.SinceBefore);
                else if (Letters.IndexOf(from[k], StringComparison.Ordinal) > Letters.IndexOf(to[i], StringComparison.Ordinal) && other > number) cost += PickingCosts.InHaste(PickingCosts.CrossedOver, after.SinceBefore);
            }
        }
        return cost;
    }

    private static int RestOf(char finger) => finger switch { 'i' => 3, 'm' => 2, _ => 1 };
}
