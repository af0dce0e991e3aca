using System.Collections.Immutable;

namespace Fretlore.Engraving.Layout.Breaking;

/// <summary>What breaking a song into systems needs to know of a measure, in staff spaces.</summary>
/// <param name="Natural">Its width at rest.</param>
/// <param name="Least">The least width its ink allows.</param>
/// <param name="AtStart">What is added when it begins a system: clef, key signature.</param>
/// <param name="AtEnd">What is added when it ends one: a warning of a new metre or key.</param>
/// <param name="StartsSection">Whether a section begins here.</param>
/// <param name="StaysWithNext">Whether no system may end after it.</param>
/// <param name="StartsSystem">Whether a system must begin with it; the one before ends where it ends.</param>
internal readonly record struct BreakItem(
    double Natural, double Least, double AtStart, double AtEnd, bool StartsSection = false, bool StaysWithNext = false, bool StartsSystem = false);

/// <summary>Breaks the whole song into systems at the least total cost: the shortest path from the first bar to the last.</summary>
internal static class SystemBreaker
{
    /// <summary>How far the last system is stretched to reach the margin; a shorter one ends where it ends.</summary>
    public const double LastStretch = 0.45;

    private const double SectionInside = 0.25;
    private const double LonelyLast = 2;
    private const double Forbidden = 1e4;

    /// <returns>The first measure of each system.</returns>
    public static ImmutableArray<int> Break(ReadOnlySpan<BreakItem> items, double firstWidth, double width)
    {
        var best = new double[items.Length + 1];
        var from = new int[items.Length + 1];
        Array.Fill(best, double.PositiveInfinity);
        best[0] = 0;
        for (var first = 0; first < items.Length; first++)
        {
            if (double.IsPositiveInfinity(best[first])) continue;
            for (var end = first + 1; end <= items.Length; end++)
            {
                var cost = Cost(items, first, end, first == 0 ? firstWidth : width, out var tooWide);
                if (best[first] + cost < best[end])
                {
                    best[end] = best[first] + cost;
                    from[end] = first;
                }
                if (tooWide || (end < items.Length && items[end].StartsSystem)) break;
            }
        }
        var starts = new Stack<int>();
        for (var end = items.Length; end > 0; end = from[end]) starts.Push(from[end]);
        return [.. starts];
    }

    /// <summary>What a system from one measure up to another costs: the square of how far it is stretched or pressed, and more for bad places.</summary>
    public static double Cost(ReadOnlySpan<BreakItem> items, int first, int end, double width, out bool tooWide)
    {
        double natural = items[first].AtStart + items[end - 1].AtEnd, least = natural, cost = 0;
        for (var i = first; i < end; i++)
        {
            natural += items[i].Natural;
            least += items[i].Least;
            if (i > first && items[i].StartsSection) cost += SectionInside;
        }
        tooWide = least > width;
        if (items[end - 1].StaysWithNext && end < items.Length) cost += Forbidden;
        if (tooWide) return end == first + 1 ? cost + 1e6 + (least - width) : double.PositiveInfinity;

        var stretch = (width - natural) / natural;
        if (end < items.Length && !items[end].StartsSystem) return cost + (stretch >= 0 ? Square(stretch / 0.35) : Square(stretch / 0.22));
        if (end == first + 1 && first > 0 && !items[first].StartsSystem) cost += LonelyLast;
        return cost + (stretch < 0 ? Square(stretch / 0.22) : 0.4 * Square(Math.Min(stretch, 1.5)));
    }

    private static double Square(double value) => value * value;
}
