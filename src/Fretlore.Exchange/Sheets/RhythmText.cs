using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>A time in force: values that go round and round, starting anew at each bar line.</summary>
internal sealed record RhythmCell(ImmutableArray<NoteValue> Values, Tuplet? Tuplet)
{
    public string Text => string.Concat(Values.Select(SheetWords.Of)) + (Tuplet is { } tuplet ? SheetWords.Of(tuplet) : "");
}

/// <summary>Chooses where time is written in a bar: once for a run of one value, as a cell where a pattern fills beats.</summary>
internal static class RhythmText
{
    private const int LongestCell = 4;

    // A new time costs a person more than its letters: a glance and a thought.
    private const int CostOfTime = 3;

    /// <summary>For each event the time to write before it, or null.</summary>
    /// <param name="events">The events of one strand in one bar.</param>
    /// <param name="entry">The time in force where the bar begins, or null.</param>
    public static (RhythmCell?[] Before, RhythmCell? After) Of(IReadOnlyList<Event> events, RhythmCell? entry)
    {
        var count = events.Count;
        var cost = new int[count + 1];
        var from = new (int Start, RhythmCell? Cell)[count + 1];
        Array.Fill(cost, int.MaxValue);
        cost[0] = 0;
        if (entry is not null)
        {
            for (var end = 1; end <= Covered(events, 0, entry); end++) Reach(end, 0, 0, null);
        }
        for (var start = 0; start < count; start++)
        {
            if (cost[start] == int.MaxValue) continue;
            foreach (var cell in CellsAt(events, start))
            {
                var covered = Covered(events, start, cell);
                var price = cost[start] + CostOfTime + cell.Text.Length;
                Reach(start + covered, start, price, cell);
                if (covered > cell.Values.Length) Reach(start + cell.Values.Length, start, price, cell);
            }
        }
        var before = new RhythmCell?[count];
        var last = entry;
        for (var at = count; at > 0; at = from[at].Start)
        {
            before[from[at].Start] = from[at].Cell;
            if (at == count) last = from[at].Cell ?? entry;
        }
        return (before, last);

        void Reach(int end, int start, int price, RhythmCell? cell)
        {
            if (price >= cost[end]) return;
            cost[end] = price;
            from[end] = (start, cell);
        }
    }

    private static IEnumerable<RhythmCell> CellsAt(IReadOnlyList<Event> events, int start)
    {
        var first = events[start];
        var waits = false;
        for (var length = 1; length <= LongestCell && start + length <= events.Count; length++)
        {
            if (events[start + length - 1].Tuplet != first.Tuplet)
            {
                if (waits) yield return new RhythmCell([first.Value], first.Tuplet);
                yield break;
            }
            var values = Enumerable.Range(start, length).Select(i => events[i].Value).ToImmutableArray();
            if (first.Tuplet is { } tuplet && values.Max(v => v.Base) != tuplet.Unit)
            {
                // The unit of a tuplet is its cell's shortest value: the cell goes on until that comes, or the unit gives way.
                if (values.Max(v => v.Base) > tuplet.Unit || length == Math.Min(LongestCell, events.Count - start)) yield return new RhythmCell([first.Value], tuplet);
                if (values.Max(v => v.Base) > tuplet.Unit) yield break;
                waits = true;
                continue;
            }
            waits = false;
            var cell = new RhythmCell(values, first.Tuplet);
            if (length == 1 || first.Tuplet is not null || IsNatural(cell, events, start)) yield return cell;
        }
    }

    // A cell of several values goes round at least twice, or is one beat in three notes or more: a gallop.
    private static bool IsNatural(RhythmCell cell, IReadOnlyList<Event> events, int start)
    {
        if (cell.Values.Distinct().Count() < 2) return false;
        if (Covered(events, start, cell) >= 2 * cell.Values.Length) return true;
        var length = cell.Values.Aggregate(Beats.Zero, (sum, v) => sum + v.Length);
        return cell.Values.Length >= 3 && length == Beats.Quarter && events[start].Start.Denominator == 1;
    }

    private static int Covered(IReadOnlyList<Event> events, int start, RhythmCell cell)
    {
        var end = start;
        while (end < events.Count && events[end].Value == cell.Values[(end - start) % cell.Values.Length] && events[end].Tuplet == cell.Tuplet) end++;
        return end - start;
    }
}
