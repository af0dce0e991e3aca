using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Checking;

/// <summary>Whether a bar is made of rhythm cells, the end of each left out or not.</summary>
internal static class RhythmTiling
{
    /// <param name="onsets">Where notes begin in the bar, in order.</param>
    /// <param name="length">The bar's length.</param>
    /// <param name="cells">The cells there are.</param>
    public static bool IsMadeOf(IReadOnlyList<Beats> onsets, Beats length, ValueList<RhythmCell> cells)
    {
        var reached = new HashSet<Beats> { Beats.Zero };
        var open = new Stack<Beats>([Beats.Zero]);
        while (open.TryPop(out var at))
        {
            if (at == length) return true;
            foreach (var cell in cells)
            {
                var end = at + cell.Length;
                if (end <= length && !reached.Contains(end) && IsBegun(cell, at, onsets) && reached.Add(end)) open.Push(end);
            }
        }
        return false;
    }

    /// <summary>Where the notes of a cell begin, from its start.</summary>
    public static IEnumerable<Beats> OnsetsOf(RhythmCell cell)
    {
        var factor = cell.Tuplet is { } tuplet ? tuplet.Factor : Beats.Of(1);
        var at = Beats.Zero;
        foreach (var value in cell.Values)
        {
            yield return at;
            at += value.Length * factor;
        }
    }

    // The onsets within the cell's time are its first ones: none, some or all.
    private static bool IsBegun(RhythmCell cell, Beats at, IReadOnlyList<Beats> onsets)
    {
        var own = onsets.Where(o => o >= at && o < at + cell.Length).ToList();
        var i = 0;
        foreach (var onset in OnsetsOf(cell))
        {
            if (i == own.Count) return true;
            if (own[i++] != at + onset) return false;
        }
        return i == own.Count;
    }
}
