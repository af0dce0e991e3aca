namespace Fretlore.Hands.Placing;

/// <summary>Notes that begin together.</summary>
/// <param name="Start">In seconds.</param>
/// <param name="Claims">From when, in seconds, their strings must be free.</param>
/// <param name="Fresh">Notes that begin a chain.</param>
/// <param name="Further">Notes that go on in one.</param>
internal sealed record PlaceMoment(double Start, double Claims, int[] Fresh, int[] Further)
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
                notes[together[0]].Start, together.Max(i => notes[i].Claims), [.. together.Where(i => chainOf[i].Step == 0)], [.. together.Where(i => chainOf[i].Step > 0)]);
            first = end;
        }
    }

    /// <summary>What it costs to leave a note out: less where another note of the moment has its name, more for the lowest note.</summary>
    public double LeftOutCost(int note, IReadOnlyList<OpenNote> notes)
    {
        var sounding = notes[note].Note.Sounding;
        var (isLowest, isDoubled) = (true, false);
        foreach (var other in Fresh.Concat(Further))
        {
            if (other == note || notes[other].Note.IsDead) continue;
            isLowest &= sounding < notes[other].Note.Sounding;
            isDoubled |= sounding.PitchClass == notes[other].Note.Sounding.PitchClass;
        }
        return !isDoubled ? PlacingCosts.NoteLost : isLowest ? PlacingCosts.DoubledBassLost : PlacingCosts.DoubledNoteLost;
    }
}
