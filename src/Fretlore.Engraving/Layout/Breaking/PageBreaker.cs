using System.Collections.Immutable;

namespace Fretlore.Engraving.Layout.Breaking;

/// <summary>The white on a page.</summary>
/// <param name="Gap">Between two systems.</param>
/// <param name="Wider">By how much each gap between parts is wider than at rest.</param>
internal readonly record struct PageWhite(double Gap, double Wider);

/// <summary>Divides systems among pages at the least total cost and says how they spread over each page.</summary>
internal static class PageBreaker
{
    private const double NaturalGap = HouseStyle.SystemGap * 1.6;

    // A page with more white than this leaves it at its foot, so that its systems still read as one page's music.
    private const double WidestGap = 15;
    private const double WidestInFrame = 18;

    // A gap between two parts grows by this share of what one between systems grows by.
    private const double PartShare = 0.3;

    // As much as a page that is nearly a fifth short of full.
    private const double BusyTurn = 0.1;
    private const double LonelyLast = 0.6;

    /// <param name="heights">The ink height of each system.</param>
    /// <param name="firstRoom">The height for systems on the first page, below the title.</param>
    /// <param name="room">The height on every other page.</param>
    /// <param name="quietEnds">For each system, whether a page is turned well after it: at a rest, or where a section ends. None says so of none.</param>
    /// <returns>The first system of each page; null when a system is higher than a page.</returns>
    public static ImmutableArray<int>? Break(ReadOnlySpan<double> heights, double firstRoom, double room, ReadOnlySpan<bool> quietEnds = default)
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
                if (end < heights.Length && !quietEnds.IsEmpty && !quietEnds[end - 1]) cost += BusyTurn;
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

    /// <summary>How airy pages are, the last one aside: the mean over them of the square of the share of their height that is more than systems need.</summary>
    /// <param name="heights">The ink height of each system.</param>
    /// <param name="starts">The first system of each page.</param>
    /// <param name="firstRoom">The height for systems on the first page, below the title.</param>
    /// <param name="room">The height on every other page.</param>
    public static double AirinessOf(ReadOnlySpan<double> heights, ReadOnlySpan<int> starts, double firstRoom, double room)
    {
        double sum = 0;
        for (var page = 0; page + 1 < starts.Length; page++)
        {
            var space = page == 0 ? firstRoom : room;
            var left = space - (starts[page + 1] - starts[page] - 1) * NaturalGap;
            foreach (var height in heights[starts[page]..starts[page + 1]]) left -= height;
            var share = Math.Max(0, left / space);
            sum += share * share;
        }
        return starts.Length < 2 ? 0 : sum / (starts.Length - 1);
    }

    /// <summary>How the white of a page is spread between its systems and their parts.</summary>
    /// <param name="heights">The ink height of each of its systems.</param>
    /// <param name="partGaps">Gaps between parts in all of them.</param>
    /// <param name="room">The height there is.</param>
    /// <param name="isLast">Whether it is the last page, which ends where its music ends.</param>
    public static PageWhite WhiteOf(ReadOnlySpan<double> heights, int partGaps, double room, bool isLast)
    {
        var white = room;
        foreach (var height in heights) white -= height;
        var gaps = heights.Length - 1;
        var tight = Math.Min(NaturalGap, gaps == 0 ? NaturalGap : white / gaps);
        if (isLast) return new PageWhite(gaps == 0 ? 0 : Math.Min(NaturalGap * 1.2, white / gaps), 0);
        var left = white - gaps * NaturalGap;
        if (left <= 0 || gaps == 0) return new PageWhite(tight, 0);
        var wider = Math.Min(left / (gaps + partGaps * PartShare), WidestGap - NaturalGap);
        return new PageWhite(NaturalGap + wider, wider * PartShare);
    }

    /// <summary>How a frame that is looked at by itself is filled: as much white over its systems as under them.</summary>
    public static (double Above, double Gap) FrameWhiteOf(ReadOnlySpan<double> heights, double room)
    {
        var white = room;
        foreach (var height in heights) white -= height;
        var gap = heights.Length < 2 ? 0 : Math.Min(Math.Max(white / (heights.Length + 1), Math.Min(NaturalGap, white / (heights.Length - 1))), WidestInFrame);
        return ((white - gap * (heights.Length - 1)) / 2, gap);
    }

    private static double Cost(double left, double room, int systems, bool isLast, bool isFirst)
    {
        var share = left / room;
        if (isLast) return (left < 0 ? share * share * 4 : 0) + (systems == 1 && !isFirst ? LonelyLast : 0);
        return left >= 0 ? share * share * 3 + 0.02 : share * share * 8 + 0.02;
    }
}
