using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>A stretch of events, played once or several times on end.</summary>
/// <param name="First">Index of the first event.</param>
/// <param name="Length">Events in one turn.</param>
/// <param name="Turns">How often in a row.</param>
internal readonly record struct RepeatedGroup(int First, int Length, int Turns)
{
    /// <summary>Cuts a row of events so that groups of two or more that repeat at once stand alone; no tuplet is cut.</summary>
    public static IEnumerable<RepeatedGroup> Cut(IReadOnlyList<Event> events, Pauses pauses)
    {
        var forms = events.Select(e => SpokenForm.Of(e, Detail.NoteByNote)).ToArray();
        var plainFrom = 0;
        for (var at = 0; at < forms.Length;)
        {
            var best = pauses.IsWithin(events[at]) ? new RepeatedGroup(at, 1, 1) : BestAt(forms, at, last => pauses.EndsGroup(events[last]));
            if (best.Turns == 1)
            {
                at++;
                continue;
            }
            if (at > plainFrom) yield return new RepeatedGroup(plainFrom, at - plainFrom, 1);
            yield return best;
            at += best.Length * best.Turns;
            plainFrom = at;
        }
        if (forms.Length > plainFrom) yield return new RepeatedGroup(plainFrom, forms.Length - plainFrom, 1);
    }

    private static RepeatedGroup BestAt(Event[] forms, int at, Predicate<int> mayEnd)
    {
        var best = new RepeatedGroup(at, 1, 1);
        if (forms[at].Notes.Any(n => n.IsTiedFromBefore)) return best;
        // A row of one thing is told by its count; a group must hold two different things and save at least three.
        for (var length = 2; at + 2 * length <= forms.Length; length++)
        {
            if (!mayEnd(at + length - 1)) continue;
            var turns = 1;
            while (IsSame(forms, at, at + turns * length, length)) turns++;
            if (length * (turns - 1) < 3 || length * (turns - 1) <= best.Length * (best.Turns - 1)) continue;
            if (Enumerable.Range(at, length).All(i =>
                forms[i] with { Value = default, Tuplet = null } == forms[at] with { Value = default, Tuplet = null })) continue;
            best = new RepeatedGroup(at, length, turns);
        }
        return best;
    }

    private static bool IsSame(Event[] forms, int a, int b, int length)
    {
        if (b + length > forms.Length) return false;
        for (var i = 0; i < length; i++)
        {
            if (forms[a + i] != forms[b + i]) return false;
        }
        return true;
    }
}
