using Fretlore.Music;

namespace Fretlore.Reading.Spelling;

/// <summary>For notes of the same surroundings, the best name in each local key and its cost; worked out once.</summary>
internal sealed class SpellingTable
{
    // Dbbb to Axx is far beyond any name that is ever the best.
    private const int Furthest = 24;

    private readonly Dictionary<NoteSurroundings, Row> rows = [];

    internal Row Of(in NoteSurroundings note)
    {
        if (rows.TryGetValue(note, out var row)) return row;
        var root = note.ChordRoot < 0 ? null : Of(note with { PitchClass = note.ChordRoot, ChordRoot = -1, AboveRoot = 0, Leads = Leading.Nowhere });
        row = new Row();
        for (var key = 0; key < LocalKey.Count; key++)
        {
            row.Costs[key] = double.PositiveInfinity;
            foreach (var fifths in Names(note.PitchClass))
            {
                var cost = SpellingCosts.Of(note, fifths, LocalKey.At(key), root?.Names[key] ?? 0);
                if (cost >= row.Costs[key]) continue;
                row.Costs[key] = cost;
                row.Names[key] = (sbyte)fifths;
            }
        }
        rows.Add(note, row);
        return row;
    }

    /// <summary>The cost of one name of a note in one local key.</summary>
    internal double Cost(in NoteSurroundings note, int fifths, int key)
    {
        var root = note.ChordRoot < 0 ? 0 : Of(note with { PitchClass = note.ChordRoot, ChordRoot = -1, AboveRoot = 0, Leads = Leading.Nowhere }).Names[key];
        return SpellingCosts.Of(note, fifths, LocalKey.At(key), root);
    }

    /// <summary>The places on the line of fifths that sound as a pitch class.</summary>
    internal static IEnumerable<int> Names(int pitchClass)
    {
        for (var fifths = NoteName.Wrap(pitchClass * 7, 12) - Furthest; fifths <= Furthest; fifths += 12) yield return fifths;
    }

    /// <summary>Names and costs by local key.</summary>
    internal sealed class Row
    {
        public sbyte[] Names { get; } = new sbyte[LocalKey.Count];

        public double[] Costs { get; } = new double[LocalKey.Count];
    }
}
