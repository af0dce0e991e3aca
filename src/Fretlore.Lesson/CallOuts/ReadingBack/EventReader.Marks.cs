using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

internal sealed partial class EventReader
{
    // Marks, counts, lengths and further strings belong to what was said last.
    private bool TryMark(WordRow row)
    {
        if (Events.Count == 0 && graces.Count == 0) return false;
        if (row.TakeTimes(out var times)) return Repeat(times);
        if (row.Current == "for") return TryLength(row);
        if (row.Current == "with" && TryMore(row)) return true;
        if (graces.Count > 0)
        {
            if (!MarkReader.TryMark(row, graces[^1], out var grace)) return false;
            graces[^1] = grace;
            return true;
        }
        return MarkEvents(row);
    }

    private bool MarkEvents(WordRow row)
    {
        var last = Events[^1];
        if (MarkReader.TryEventMark(row, last, out var whole))
        {
            Replace(whole);
            return true;
        }
        if (last.IsRest || saidLast.Count == 0) return false;
        var marked = last.Notes.ToArray();
        var end = row.Place;
        foreach (var index in saidLast)
        {
            var start = row.Place;
            if (!MarkReader.TryMark(row, marked[index], out marked[index])) return false;
            end = row.Place;
            row.Place = start;
        }
        row.Place = end;
        Replace(last with { Notes = marked.ToValueList() });
        return true;
    }

    private void Replace(Event item)
    {
        for (var i = 0; i < sameEvents; i++) Events[^(i + 1)] = item with { Value = Events[^(i + 1)].Value,
            Tuplet = Events[^(i + 1)].Tuplet };
        Follow(item);
    }

    private bool Repeat(int times)
    {
        var item = Events[^1];
        for (var i = 1; i < times; i++) Events.Add(Timed(item));
        sameEvents = times;
        return true;
    }

    private bool TryLength(WordRow row)
    {
        var at = row.Place + 1;
        if (ValueWords.TryRead(row.Words, ref at, out var value))
        {
            row.Place = at;
            if (cell.Length > 1) cellAt = (cellAt + cell.Length - 1) % cell.Length;
            Events[^1] = Events[^1] with { Value = value.Value, Tuplet = value.Tuplet };
            return true;
        }
        return TryBeats(row);
    }

    // "for two beats", "for a beat and a half": said for the ear; the values of a walk-through are not read back.
    private static bool TryBeats(WordRow row)
    {
        var start = row.Place;
        row.Take("for");
        if (row.Current is not ("beat" or "count") && !row.TakeNumber(out _))
        {
            row.Place = start;
            return false;
        }
        row.Take("half");
        var named = row.Take("beats") || row.Take("beat") || row.Take("counts") || row.Take("count");
        row.Take("half");
        if (!named) row.Place = start;
        return named;
    }

    private bool TryMore(WordRow row)
    {
        var start = row.Place++;
        if (!TryPlace(row, out var more))
        {
            row.Place = start;
            return false;
        }
        place = more;
        row.SkipPauses();
        if (Events.Count == 0 || !TryCore(row, out var notes, out var count) || count != 1) return false;
        var first = Events[^1].Notes.Count;
        Events[^1] = Events[^1] with { Notes = [.. Events[^1].Notes.Items, .. notes] };
        saidLast.Clear();
        saidLast.AddRange(Enumerable.Range(first, notes.Count));
        Follow(Events[^1]);
        return true;
    }
}
