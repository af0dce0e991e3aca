namespace Fretlore.Hands.Placing;

/// <summary>Notes that begin together.</summary>
/// <param name="Start">In seconds.</param>
/// <param name="Claims">From when, in seconds, their strings must be free.</param>
/// <param name="Fresh">Notes that begin a chain.</param>
/// <param name="Further">Notes that go on in one.</param>
/// <param name="Shapes">The named shapes they are part of.</param>
internal sealed record PlaceMoment(double Start, double Claims, int[] Fresh, int[] Further, HashSet<string> Shapes)
{
    /// <summary>Seconds within which notes begin together.</summary>
    public const double SameTime = 0.0005;

    /// <summary>All moments of a line in order of time.</summary>
    public static IEnumerable<PlaceMoment> Of(IReadOnlyList<OpenNote> notes, (int Chain, int Step)[] chainOf)
    {
        int[] order = [.. Enumerable.Range(0, notes.Count).OrderBy(i => notes[i].Start)];
        for (var first = 0; first < order.Length;)
        {
            var end = first + 1;
            while (end < order.Length && notes[order[end]].Start - notes[order[first]].Start <= SameTime) end++;
            var together = order[first..end];
            yield return new PlaceMoment(
                notes[together[0]].Start, together.Max(i => notes[i].Claims), OuterFirst([.. together.Where(i => chainOf[i].Step == 0)], notes), [.. together.Where(i => chainOf[i].Step > 0)],
                [.. together.Select(i => notes[i].Shape).OfType<string>()]);
            first = end;
        }
    }

    // The highest and the lowest first: where strings run out, the others give way.
    private static int[] OuterFirst(int[] fresh, IReadOnlyList<OpenNote> notes)
    {
        if (fresh.Length < 3) return fresh;
        Array.Sort(fresh, (a, b) => notes[b].Note.Sounding.CompareTo(notes[a].Note.Sounding));
        return [fresh[0], fresh[^1], .. fresh[1..^1]];
    }

    /// <summary>What it costs to leave a note out: less where another note of the moment has its name, more for the outer notes.</summary>
    /// <param name="note">The note.</param>
    /// <param name="notes">All notes.</param>
    /// <param name="mayLose">False where nothing is to be lost as long as a string is free for it.</param>
    public double LeftOutCost(int note, IReadOnlyList<OpenNote> notes, bool mayLose)
    {
        var sounding = notes[note].Note.Sounding;
        var (isLowest, isHighest, isDoubled) = (true, true, false);
        foreach (var other in Fresh.Concat(Further))
        {
            if (other == note || notes[other].Note.IsDead) continue;
            isLowest &= sounding < notes[other].Note.Sounding;
            isHighest &= sounding > notes[other].Note.Sounding;
            isDoubled |= sounding.PitchClass == notes[other].Note.Sounding.PitchClass;
        }
        if (mayLose && isDoubled) return isLowest ? PlacingCosts.DoubledBassLost : PlacingCosts.DoubledNoteLost;
        return isLowest || isHighest ? PlacingCosts.NoteLost : PlacingCosts.InnerNoteLost;
    }
}
