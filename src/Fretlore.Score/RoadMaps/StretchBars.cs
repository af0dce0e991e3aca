using System.Globalization;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>Bars next to each other, first and last; negative numbers count from the stretch's end, -1 being its last bar.</summary>
public readonly record struct StretchRange(int First, int Last)
{
    /// <summary>The numbers counted from the start of a stretch; the last may be less than the first where the stretch is too short.</summary>
    public StretchRange In(int count) => new(First < 0 ? count + 1 + First : First, Last < 0 ? count + 1 + Last : Last);
}

/// <summary>The bars of a stretch that a rule is for.</summary>
/// <param name="Ranges">In the order written; at least one.</param>
public sealed record StretchBars(ValueList<StretchRange> Ranges)
{
    /// <summary>The last bars of a stretch.</summary>
    public static StretchBars Final(int bars) => new([new StretchRange(-bars, -1)]);

    public static StretchBars Of(int first, int last) => new([new StretchRange(first, last)]);

    /// <summary>The highest bar number, counted from the start; 0 when bars are counted from the end.</summary>
    public int LastNamed => Math.Max(0, Ranges.Items.Max(r => r.Last));

    /// <param name="bar">From 1.</param>
    /// <param name="count">Bars of the stretch.</param>
    public bool Contains(int bar, int count)
    {
        foreach (var range in Ranges)
        {
            var (first, last) = range.In(count);
            if (bar >= first && bar <= last) return true;
        }
        return false;
    }

    /// <summary>The bars that there are in a stretch, from 1, each once.</summary>
    public IEnumerable<int> In(int count) => Enumerable.Range(1, count).Where(bar => Contains(bar, count));

    /// <summary>As a sheet has it: <c>in bar 4</c>, <c>in bars 1-2, 6</c>, <c>in last bar</c>, <c>in last 2 bars</c>.</summary>
    public override string ToString()
    {
        if (Ranges is [{ First: < 0 } final]) return final.First == -1 ? "in last bar" : string.Create(CultureInfo.InvariantCulture, $"in last {-final.First} bars");
        var isOne = Ranges is [{ } range] && range.First == range.Last;
        return (isOne ? "in bar " : "in bars ") + string.Join(", ", Ranges.Select(Text));
    }

    private static string Text(StretchRange range) => range.First == range.Last
        ? range.First.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{range.First}-{range.Last}");
}
