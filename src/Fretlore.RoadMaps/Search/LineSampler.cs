namespace Fretlore.RoadMaps.Search;

/// <summary>
/// Chooses a place for each slot by the weights of all lines that keep the rules: messages from the end tell each choice what can still come, so that no
/// choice leads where no rule-keeping line goes on.
/// </summary>
/// <remarks>
/// Exact: a line is drawn with the chance its weight has among all allowed lines (forward filtering and backward sampling for hidden Markov models, run from the
/// other end). A phrase that answers another gets its costs when that one is known; what comes after it is weighed as before.
/// </remarks>
internal sealed class LineSampler
{
    private readonly Lattice lattice;
    private readonly Slot[] slots;
    private readonly StepRules rules;
    private readonly double[][] steps;
    private readonly byte[][] ways;
    private readonly double[][] ahead;
    private readonly double[] turns = new double[StepRules.Ways * StepRules.Ways];

    /// <param name="lattice">All lines that keep the rules; pruned.</param>
    public LineSampler(Lattice lattice)
    {
        this.lattice = lattice;
        (slots, rules) = (lattice.Slots, lattice.Rules);
        steps = new double[slots.Length][];
        ways = new byte[slots.Length][];
        ahead = new double[slots.Length][];
        for (var before = 0; before < StepRules.Ways; before++)
        {
            for (var now = 0; now < StepRules.Ways; now++) turns[before * StepRules.Ways + now] = Bits.Weight(rules.TurnCost(before, now));
        }
        for (var i = 1; i < slots.Length; i++) WeighStep(i);
        if (slots.Length > 0) LookAhead(0, slots.Length - 1, null);
    }

    /// <summary>Draws the slots from one to another, both included.</summary>
    /// <param name="dice">Chance.</param>
    /// <param name="first">The first slot; those before it are drawn.</param>
    /// <param name="last">The last slot.</param>
    /// <param name="chosen">For each slot the index of its node; filled in.</param>
    /// <param name="arrived">For each slot how its note was come to; filled in.</param>
    /// <param name="extra">More cost in bits for a slot's node, or null.</param>
    /// <returns>False when no line goes on.</returns>
    public bool Draw(Dice dice, int first, int last, int[] chosen, int[] arrived, Func<int, int, double>? extra)
    {
        if (extra is not null) LookAhead(first, last, extra);
        for (var i = first; i <= last; i++)
        {
            var weights = i == 0 ? FirstWeights(extra) : NextWeights(i, chosen[i - 1], arrived[i - 1], extra);
            var at = dice.ByWeight(weights);
            if (at < 0) return false;
            chosen[i] = at;
            arrived[i] = i == 0 ? 0 : ways[i][chosen[i - 1] * slots[i].Nodes.Length + at];
        }
        return true;
    }

    private double[] FirstWeights(Func<int, int, double>? extra)
    {
        var weights = new double[slots[0].Nodes.Length];
        for (var n = 0; n < weights.Length; n++) weights[n] = Own(0, n, extra) * ahead[0][n * StepRules.Ways];
        return weights;
    }

    private double[] NextWeights(int i, int before, int way, Func<int, int, double>? extra)
    {
        var count = slots[i].Nodes.Length;
        var weights = new double[count];
        for (var n = 0; n < count; n++)
        {
            var step = steps[i][before * count + n];
            if (step == 0) continue;
            var now = ways[i][before * count + n];
            weights[n] = step * turns[way * StepRules.Ways + now] * Own(i, n, extra) * ahead[i][n * StepRules.Ways + now];
        }
        return weights;
    }

    private double Own(int i, int node, Func<int, int, double>? extra) => Bits.Weight(Math.Max(0, slots[i].Costs[node] + (extra is null ? 0 : extra(i, node))));

    private void WeighStep(int i)
    {
        var (from, to) = (slots[i - 1], slots[i]);
        var (rows, columns) = (from.Nodes.Length, to.Nodes.Length);
        steps[i] = new double[rows * columns];
        ways[i] = new byte[rows * columns];
        for (var a = 0; a < rows; a++)
        {
            for (var b = 0; b < columns; b++)
            {
                if (!lattice.Follows(i, a, b)) continue;
                steps[i][a * columns + b] = Bits.Weight(rules.Cost(from.Nodes[a], to, to.Nodes[b]));
                ways[i][a * columns + b] = (byte)rules.WayTo(from.Nodes[a], to, to.Nodes[b]);
            }
        }
    }

    // ahead[i][node, way]: the weight of everything after slot i, when it has that node and was come to that way.
    private void LookAhead(int first, int last, Func<int, int, double>? extra)
    {
        for (var i = last; i >= first; i--)
        {
            var count = slots[i].Nodes.Length;
            if (i == slots.Length - 1)
            {
                ahead[i] = new double[count * StepRules.Ways];
                Array.Fill(ahead[i], 1);
                continue;
            }
            // What lies beyond the last slot is known from before.
            if (i == last && extra is not null) continue;
            ahead[i] = Messages(i, extra);
        }
    }

    private double[] Messages(int i, Func<int, int, double>? extra)
    {
        var (count, next) = (slots[i].Nodes.Length, slots[i + 1].Nodes.Length);
        var own = new double[next];
        for (var n = 0; n < next; n++) own[n] = Own(i + 1, n, extra);
        var message = new double[count * StepRules.Ways];
        var most = 0.0;
        Span<double> byWay = stackalloc double[StepRules.Ways];
        for (var a = 0; a < count; a++)
        {
            byWay.Clear();
            for (var b = 0; b < next; b++)
            {
                var step = steps[i + 1][a * next + b];
                if (step == 0) continue;
                var now = ways[i + 1][a * next + b];
                byWay[now] += step * own[b] * ahead[i + 1][b * StepRules.Ways + now];
            }
            for (var before = 0; before < StepRules.Ways; before++)
            {
                for (var now = 0; now < StepRules.Ways; now++) message[a * StepRules.Ways + before] += byWay[now] * turns[before * StepRules.Ways + now];
            }
        }
        foreach (var weight in message) most = Math.Max(most, weight);
        if (most > 0)
        {
            // Only ratios matter; a power of two keeps them exact.
            var scale = Math.ScaleB(1, -Math.ILogB(most));
            for (var m = 0; m < message.Length; m++) message[m] *= scale;
        }
        return message;
    }
}
