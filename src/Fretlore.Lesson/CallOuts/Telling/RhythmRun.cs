using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>Patterns that have a name of their own.</summary>
internal enum Cell
{
    None,

    /// <summary>An eighth and two 16ths on the beat.</summary>
    Gallop,

    /// <summary>Two 16ths and an eighth on the beat.</summary>
    ReverseGallop,
}

/// <summary>Events in a row with one rhythm: all of one value, or whole named patterns.</summary>
/// <param name="Cell">The pattern, or none for events of one value.</param>
/// <param name="First">Index of the first event.</param>
/// <param name="Count">How many events.</param>
internal readonly record struct RhythmRun(Cell Cell, int First, int Count)
{
    private static readonly NoteValue Eighth = new(ValueBase.Eighth);
    private static readonly NoteValue Sixteenth = new(ValueBase.Sixteenth);

    /// <summary>Cuts a row of events into runs.</summary>
    public static IEnumerable<RhythmRun> Of(IReadOnlyList<Event> events)
    {
        for (var at = 0; at < events.Count;)
        {
            var cell = CellAt(events, at);
            var end = at;
            if (cell != Cell.None)
            {
                while (CellAt(events, end) == cell) end += 3;
            }
            else
            {
                do end++;
                while (end < events.Count && events[end].Value == events[at].Value && events[end].Tuplet == events[at].Tuplet
                    && CellAt(events, end) == Cell.None);
            }
            yield return new RhythmRun(cell, at, end - at);
            at = end;
        }
    }

    private static Cell CellAt(IReadOnlyList<Event> events, int at)
    {
        if (at + 3 > events.Count || events[at].Start.Denominator != 1) return Cell.None;
        for (var i = at; i < at + 3; i++)
        {
            if (events[i].Tuplet is not null || events[i].IsRest || events[i].Graces.Count > 0
                || events[i].Notes.Any(n => n.IsTiedFromBefore)) return Cell.None;
        }
        return (events[at].Value, events[at + 1].Value, events[at + 2].Value) switch
        {
            var (a, b, c) when a == Eighth && b == Sixteenth && c == Sixteenth => Cell.Gallop,
            var (a, b, c) when a == Sixteenth && b == Sixteenth && c == Eighth => Cell.ReverseGallop,
            _ => Cell.None,
        };
    }
}
