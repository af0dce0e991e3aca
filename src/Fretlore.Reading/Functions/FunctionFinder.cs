using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Reading.Chords;

namespace Fretlore.Reading.Functions;

/// <summary>Says what a chord does in its key, from its notes and the chord after it.</summary>
internal static class FunctionFinder
{
    private static readonly PitchClassSet HarmonicMinor = PitchClassSet.Of(0, 2, 3, 5, 7, 8, 11);

    // Whose chords are borrowed first: the parallel minor and major, then the modes nearest to them.
    private static readonly Mode[] Lenders = [Mode.Aeolian, Mode.Ionian, Mode.Mixolydian, Mode.Dorian, Mode.Phrygian, Mode.Lydian, Mode.Locrian];

    /// <param name="chord">The chord.</param>
    /// <param name="next">The chord after it in the same part, when there is one.</param>
    /// <param name="key">The key it stands in.</param>
    /// <param name="nextKey">The key the next chord stands in.</param>
    internal static ChordFunction? Of(ChordName? chord, ChordName? next, Key key, Key nextKey)
    {
        if (chord is not { } name) return null;
        var numeral = RomanNumeral.Of(name, key.Tonic);
        var notes = (name.Kind.Family.Tones.Except(name.Kind.Omitted) | name.Kind.Tensions).Up(name.Root.PitchClass);
        var above = NoteName.Wrap(name.Root.PitchClass - key.Tonic.PitchClass, 12);
        var home = KeyNotes.Of(key);
        if (notes.IsWithin(home)) return Own(numeral, name, key);
        if (key.IsMinor && above is 7 or 11 && notes.IsWithin(HarmonicMinor.Up(key.Tonic.PitchClass)))
        {
            return new ChordFunction(numeral, HarmonicFunction.Dominant, $"dominant with the raised seventh of {key.Tonic} harmonic minor; pulls home");
        }
        if (next is { } goal && key == nextKey && IsDominantOf(name, goal) && goal.Root.PitchClass != key.Tonic.PitchClass && home.Contains(goal.Root.PitchClass))
        {
            var target = RomanNumeral.Degree(goal, key.Tonic);
            return new ChordFunction($"V{RomanNumeral.Quality(name.Kind)}/{target}", HarmonicFunction.SecondaryDominant, $"dominant of the {target} that follows");
        }
        foreach (var mode in Lenders)
        {
            if (mode == key.Mode) continue;
            var lender = new Key(key.Tonic, mode, mode is Mode.Ionian or Mode.Aeolian);
            if (!notes.IsWithin(KeyNotes.Of(lender))) continue;
            return new ChordFunction(numeral, HarmonicFunction.Borrowed, $"borrowed from {lender}");
        }
        return new ChordFunction(numeral, HarmonicFunction.Outside, $"has notes outside {key} that no mode on {key.Tonic} explains together");
    }

    private static bool IsDominantOf(ChordName chord, ChordName goal) =>
        chord.Kind.Family is { Third: 4, Fifth: 7, Seventh: not 11 } && NoteName.Wrap(goal.Root.PitchClass - chord.Root.PitchClass, 12) == 5
        && goal.Kind.Family.Third > 0;

    private static ChordFunction Own(string numeral, ChordName chord, Key key)
    {
        var (kind, words) = Interval.Between(key.Tonic, chord.Root).Steps switch
        {
            0 => (HarmonicFunction.Tonic, "tonic: home"),
            1 => (HarmonicFunction.Subdominant, "second degree: leads away from home"),
            2 => (HarmonicFunction.Tonic, "third degree: shares notes with home"),
            3 => (HarmonicFunction.Subdominant, "subdominant: leads away from home"),
            4 when chord.Kind.Family.Third == 3 => (HarmonicFunction.Dominant, "minor dominant: leads home without a leading note"),
            4 when chord.Kind.Family.Third < 0 => (HarmonicFunction.Dominant, "fifth degree: leads home"),
            4 => (HarmonicFunction.Dominant, "dominant: pulls home"),
            5 when key.IsMinor => (HarmonicFunction.Subdominant, "sixth degree: leads away from home"),
            5 => (HarmonicFunction.Tonic, "sixth degree: shares notes with home"),
            _ when chord.Kind.Family.Third == 3 && chord.Kind.Family.Fifth == 6 => (HarmonicFunction.Dominant, "leading-note chord: pulls home"),
            _ => (HarmonicFunction.Dominant, "seventh degree: leads home by a step"),
        };
        var telling = Telling(key, chord);
        return new ChordFunction(numeral, kind, telling is null ? words : $"{words}; {telling}");
    }

    // The note by which the mode differs from plain major or minor.
    private static string? Telling(Key key, ChordName chord)
    {
        var (degree, words) = key.Mode switch
        {
            Mode.Dorian => (9, "sixth"),
            Mode.Phrygian => (1, "flat second"),
            Mode.Lydian => (6, "sharp fourth"),
            Mode.Mixolydian => (10, "flat seventh"),
            Mode.Locrian => (6, "flat fifth"),
            _ => (-1, ""),
        };
        if (degree < 0) return null;
        var at = NoteName.Wrap(key.Tonic.PitchClass + degree - chord.Root.PitchClass, 12);
        var tones = chord.Kind.Family.Tones.Except(chord.Kind.Omitted);
        return tones.Contains(at) ? $"has the {words} that makes it {key.Mode.ToString().ToLowerInvariant()}" : null;
    }
}
