using Fretlore.Score;

namespace Fretlore.Hands.Picking;

/// <summary>The strokes of a pick that cost least over a whole line, by dynamic programming over down and up: exact.</summary>
internal static class PickSearch
{
    private static readonly Stroke[] Ways = [Stroke.Down, Stroke.Up];

    public static Stroke[] Find(IReadOnlyList<PluckedMoment> moments)
    {
        var cameFrom = new int[moments.Count][];
        double[] costs = [];
        for (var i = 0; i < moments.Count; i++)
        {
            var next = new double[Ways.Length];
            cameFrom[i] = new int[Ways.Length];
            for (var to = 0; to < Ways.Length; to++)
            {
                var best = i == 0 ? Ways[to] == Stroke.Up ? PickingCosts.BeginsUpwards : 0 : double.MaxValue;
                for (var from = 0; from < costs.Length; from++)
                {
                    var cost = costs[from] + Change(moments[i - 1], Ways[from], moments[i], Ways[to]);
                    if (cost >= best) continue;
                    (best, cameFrom[i][to]) = (cost, from);
                }
                next[to] = best + Alone(moments[i], Ways[to]);
            }
            costs = next;
        }
        var strokes = new Stroke[moments.Count];
        var at = costs.Length == 0 || costs[0] <= costs[1] ? 0 : 1;
        for (var i = strokes.Length - 1; i >= 0; i--)
        {
            strokes[i] = Ways[at];
            at = cameFrom[i][at];
        }
        return strokes;
    }

    /// <summary>What one stroke costs by itself; what the sheet says otherwise is out of the question.</summary>
    public static double Alone(PluckedMoment moment, Stroke way)
    {
        if (moment.Stated != Stroke.None && moment.Stated != way) return double.PositiveInfinity;
        var cost = moment.SwingsDown == (way == Stroke.Down) ? 0 : PickingCosts.AgainstTheBeat;
        return way == Stroke.Up && moment.IsOnBeat && moment.Strings.Length > 2 ? cost + PickingCosts.ChordUpwards : cost;
    }

    /// <summary>What it costs to come from one stroke to the next.</summary>
    public static double Change(PluckedMoment before, Stroke from, PluckedMoment after, Stroke to)
    {
        if (from == to)
        {
            // Down goes on to the next higher string, up to the next lower one.
            var goesOn = from == Stroke.Down ? after.LowString == before.HighString - 1 : after.HighString == before.LowString + 1;
            if (!goesOn || after.Strings.Length > 1 || after.SinceBefore > PickingCosts.ShortTime) return PickingCosts.InHaste(PickingCosts.SameWay, after.SinceBefore);
            return PickingCosts.Sweep - (after.SwingsDown == (to == Stroke.Down) ? 0 : PickingCosts.AgainstTheBeat);
        }
        // Down, then up on a lower string, or up, then down on a higher one: the pick is between the two.
        var isInside = from == Stroke.Down ? after.HighString > before.LowString : after.LowString < before.HighString;
        var isOutside = from == Stroke.Down ? after.HighString < before.LowString : after.LowString > before.HighString;
        return PickingCosts.InHaste(isInside ? PickingCosts.InsideChange : isOutside ? PickingCosts.OutsideChange : 0, after.SinceBefore);
    }
}
