namespace Fretlore.Score;

/// <summary>The frets a free bar stays on.</summary>
/// <param name="Low">The lowest, counted from the capo.</param>
/// <param name="High">The highest.</param>
public readonly record struct FretWindow(int Low, int High)
{
    /// <summary>Frets under a hand that stands still: one for each finger, and one to reach (common practice).</summary>
    public const int HandSpan = 5;

    public bool Contains(int fret) => fret >= Low && fret <= High;

    /// <summary>The window of a bar: the rule's frets, or on a way the hand's place at that time.</summary>
    /// <param name="rule">A rule that is for the bar.</param>
    /// <param name="bar">From 1.</param>
    /// <param name="count">Bars of the stretch.</param>
    public static FretWindow Of(FretsRule rule, int bar, int count)
    {
        var (low, high) = (Math.Min(rule.From.Number, rule.To.Number), Math.Max(rule.From.Number, rule.To.Number));
        if (!rule.Moves || high - low < HandSpan) return new FretWindow(low, high);
        var bars = rule.Bars?.In(count).ToList() ?? [.. Enumerable.Range(1, count)];
        if (bars.Count < 2) return new FretWindow(low, high);
        var falls = rule.From.Number > rule.To.Number;
        var (start, end) = falls ? (high - HandSpan + 1, low) : (low, high - HandSpan + 1);
        var passed = bars.IndexOf(bar);
        // To the nearest fret, halves away from the start.
        var moved = (2 * passed * (end - start) + (end > start ? bars.Count - 1 : 1 - bars.Count)) / (2 * (bars.Count - 1));
        return new FretWindow(start + moved, start + moved + HandSpan - 1);
    }
}
