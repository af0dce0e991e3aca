using System.Collections.Immutable;

namespace Fretlore.Engraving.Layout.Breaking;

/// <summary>Divides systems among pages at the least total cost and says how they spread over each page.</summary>
internal static class PageBreaker
{
    private const double NaturalGap = HouseStyle.SystemGap * 1.6;
    private const double WidestGap = 9;
    private const double LonelyLast = 0.6;

    /// <param name="heights">The ink height of each system.</param>
    /// <param name="firstRoom">The height for systems on the first page, below the title.</param>
    /// <param name="room">The height on every other page.</param>
    /// <returns>The first system of each page; null when a system is higher than a page.</returns>
    public static ImmutableArray<int>? Break(ReadOnlySpan<double> heights, double firstRoom, double room)
    {
        var best = new double[heights.Length + 1];
        var from = new int[heights.Length + 1];
        Array.Fill(best, double.PositiveInfinity);
        best[0] = 0;
        for (var first = 0; first < heights.Length; first++)
        {
            if (double.IsPositiveInfinity(best[first])) continue;
            var space = first == 0 ? firstRoom : room;
            double sum = 0;
            for (var end = first + 1; end <= heights.Length; end++)
            {
                sum += heights[end - 1];
                var count = end - first;
                if (sum + (count - 1) * HouseStyle.SystemGap > space) break;
                var cost = Cost(space - sum - (count - 1) * NaturalGap, space, count, end == heights.Length, first == 0);
                if (best[first] + cost >= best[end]) continue;
                best[end] = best[first] + cost;
                from[end] = first;
            }
        }
        if (double.IsPositiveInfinity(best[heights.Length])) return null;
        var starts = new Stack<int>();
        for (var end = heights.Length; end > 0; end = from[end]) starts.Push(from[end]);
        return [.. starts];
    }

    /// <summary>The white between the systems of a page: what is left over spread evenly, but on the last page no wider than usual.</summary>
    public static double GapOf(ReadOnlySpan<double> heights, double room, bool isLast)
    {
        if (heights.Length < 2) return 0;
        var sum = 0.0;
        foreach (var height in heights) sum += height;
        var even = (room - sum) / (heights.Length - 1);
        return Math.Min(even, isLast ? NaturalGap * 1.2 : WidestGap);
    }

    private static double Cost(double left, double room, int systems, bool isLast, bool isFirst)
    {
        var share = left / room;
        if (isLast) return (left < 0 ? share * share * 4 : 0) + (systems == 1 && !isFirst ? LonelyLast : 0);
        return left >= 0 ? share * share * 3 + 0.02 : share * share * 8 + 0.02;
    }
}
