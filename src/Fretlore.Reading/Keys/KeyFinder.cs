using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Keys;
using Fretlore.Reading.Chords;

namespace Fretlore.Reading.Keys;

/// <summary>A key that music may be in.</summary>
/// <param name="Key">Tonic and mode.</param>
/// <param name="Fit">Correlation with the profile plus what bass, first and last notes say; higher is better.</param>
public readonly record struct KeyReading(Key Key, double Fit);

/// <summary>Finds the key of music that states none.</summary>
/// <remarks>
/// The Bellman-Budge profile, which reads most of the real scores of the tests aright, with what the bass, the first and the last note say about the tonic: a profile alone takes E minor pentatonic for G major.
/// The mode follows from the notes that tell modes apart.
/// </remarks>
public static class KeyFinder
{
    // A mode's own note must outweigh the ordinary one this many times.
    private const double Outweighs = 2;

    /// <summary>All 24 tonics and thirds, best first, each with its likeliest mode; C major alone when nothing sounds.</summary>
    public static ImmutableArray<KeyReading> Find(NoteWeights weights)
    {
        if (weights.Set.IsEmpty) return [new KeyReading(new Key(new NoteName(Step.C), Mode.Ionian, true), 0)];
        var found = new List<KeyReading>(24);
        for (var above = 0; above < 12; above++)
        {
            var tonic = (weights.Origin + above) % 12;
            for (var third = 0; third < 2; third++)
            {
                var isMinor = third == 1;
                var fit = KeyProfile.BellmanBudge.Correlate(weights.AsSpan(), tonic, isMinor) + weights.RootEvidence(tonic);
                found.Add(new KeyReading(new Key(TonicName(tonic, isMinor), ModeOf(weights, tonic, isMinor), false), fit));
            }
        }
        return [.. found.OrderByDescending(k => k.Fit).Select(k => k with { Key = Named(k.Key) })];
    }

    private static Mode ModeOf(NoteWeights weights, int tonic, bool isMinor)
    {
        double At(int degree) => weights[(tonic + degree) % 12];
        bool Tells(int own, int ordinary) => At(own) > Outweighs * At(ordinary);
        if (isMinor)
        {
            var flatSecond = Tells(1, 2);
            if (flatSecond && Tells(6, 7)) return Mode.Locrian;
            if (flatSecond) return Mode.Phrygian;
            return Tells(9, 8) ? Mode.Dorian : Mode.Aeolian;
        }
        if (Tells(6, 5)) return Mode.Lydian;
        return Tells(10, 11) ? Mode.Mixolydian : Mode.Ionian;
    }

    private static Key Named(Key key) => key.Mode is Mode.Ionian or Mode.Aeolian ? key with { IsMajorMinor = true } : key;

    // The spelling with the fewer signs in its signature; six of them go to sharps, as guitarists read F# more than Gb.
    private static NoteName TonicName(int pitchClass, bool isMinor)
    {
        var offset = isMinor ? 3 : 0;
        var best = RootSpelling.Of(pitchClass, null, null);
        for (var fifths = -6; fifths <= 11; fifths++)
        {
            var name = NoteName.FromFifths(fifths);
            if (name.PitchClass == pitchClass && fifths - offset is > -6 and <= 6) best = name;
        }
        return best;
    }
}
