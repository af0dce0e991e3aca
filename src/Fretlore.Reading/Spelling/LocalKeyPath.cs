using Fretlore.Music;

namespace Fretlore.Reading.Spelling;

/// <summary>Finds the local key of each moment: the cheapest path through all notes, where a change of key costs as much as a few notes that fit badly.</summary>
/// <remarks>
/// A hidden Markov model of keys and its best path (Viterbi), as in Temperley, Music and Probability, 2007, and Raphael and Stoddard, Functional Harmonic Analysis Using
/// Probabilistic Models, 2004, but on the line of fifths instead of the circle, so that Gb major and F# major are two keys. The cost of a change grows with
/// the fifths between the keys up to a limit, which makes the best change to each key two walks over the line: the work grows with the notes and not with pairs of keys.
/// </remarks>
internal sealed class LocalKeyPath
{
    private const double Change = 3.2;
    private const double OnBeat = -0.3;
    private const double OnBar = -1.0;
    private const double PerFifth = 0.6;
    private const int MostFifths = 5;
    private const double OtherMode = 1.2;
    private const double AwayFromSignature = 0.02;

    // Centres on the line of fifths, from the flattest minor key's to the sharpest major key's.
    private const int LowestCentre = LocalKey.Lowest - 1;
    private const int Centres = LocalKey.Highest + 2 - LowestCentre + 1;

    private double[] costs = new double[LocalKey.Count];
    private double[] next = new double[LocalKey.Count];
    private readonly Reach major = new();
    private readonly Reach minor = new();

    /// <param name="notes">In order of time.</param>
    /// <param name="table">What names cost.</param>
    /// <param name="start">The key that the music is in as it begins.</param>
    /// <returns>For each note the index of its local key.</returns>
    internal byte[] Find(List<SpelledNote> notes, SpellingTable table, Key start)
    {
        var from = new List<byte>(notes.Count * LocalKey.Count / 2);
        var starts = new List<int>();
        Array.Fill(costs, double.PositiveInfinity);
        costs[LocalKey.Of(start).Index] = 0;
        for (var first = 0; first < notes.Count;)
        {
            var end = first + 1;
            while (end < notes.Count && notes[end].Time == notes[first].Time) end++;
            Step(notes[first], from);
            for (var i = first; i < end; i++)
            {
                var (row, weight) = (table.Of(notes[i].Surroundings).Costs, notes[i].Weight);
                for (var key = 0; key < LocalKey.Count; key++) costs[key] += weight * row[key];
            }
            starts.Add(first);
            first = end;
        }
        return Back(notes.Count, starts, from);
    }

    private void Step(SpelledNote at, List<byte> from)
    {
        var change = Change + (at.IsOnBar ? OnBar : at.IsOnBeat ? OnBeat : 0);
        major.Spread(costs, 0);
        minor.Spread(costs, 1);
        for (var key = 0; key < LocalKey.Count; key++)
        {
            var local = LocalKey.At(key);
            var (cost, before) = (costs[key], (byte)key);
            var place = local.Centre - LowestCentre;
            (local.IsMinor ? minor : major).Improve(place, change, ref cost, ref before);
            (local.IsMinor ? major : minor).Improve(place, change + OtherMode, ref cost, ref before);
            var signature = at.Surroundings.Signature + 2;
            var away = Math.Min(Math.Abs(local.Centre - signature), Math.Abs(local.Centre - at.Surroundings.NextSignature - 2));
            next[key] = cost + AwayFromSignature * away;
            from.Add(before);
        }
        (costs, next) = (next, costs);
    }

    private byte[] Back(int count, List<int> starts, List<byte> from)
    {
        var path = new byte[count];
        var key = 0;
        for (var other = 1; other < LocalKey.Count; other++)
        {
            if (costs[other] < costs[key]) key = other;
        }
        var end = count;
        for (var moment = starts.Count - 1; moment >= 0; moment--)
        {
            path.AsSpan(starts[moment], end - starts[moment]).Fill((byte)key);
            end = starts[moment];
            key = from[moment * LocalKey.Count + key];
        }
        return path;
    }

    /// <summary>For the keys of one mode, the cheapest of them to come from by the centre that is gone to.</summary>
    private sealed class Reach
    {
        private readonly double[] cost = new double[Centres];
        private readonly byte[] from = new byte[Centres];

        public void Spread(double[] costs, int mode)
        {
            Array.Fill(cost, double.PositiveInfinity);
            var least = mode;
            for (var key = mode; key < LocalKey.Count; key += 2)
            {
                var place = LocalKey.At(key).Centre - LowestCentre;
                (cost[place], from[place]) = (costs[key], (byte)key);
                if (costs[key] < costs[least]) least = key;
            }
            for (var place = 1; place < Centres; place++) Improve(place - 1, PerFifth, ref cost[place], ref from[place]);
            for (var place = Centres - 2; place >= 0; place--) Improve(place + 1, PerFifth, ref cost[place], ref from[place]);
            var far = costs[least] + PerFifth * MostFifths;
            for (var place = 0; place < Centres; place++)
            {
                if (far < cost[place]) (cost[place], from[place]) = (far, (byte)least);
            }
        }

        public void Improve(int place, double more, ref double best, ref byte before)
        {
            if (cost[place] + more < best) (best, before) = (cost[place] + more, from[place]);
        }
    }
}
