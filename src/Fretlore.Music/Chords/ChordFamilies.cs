using System.Collections.Immutable;

namespace Fretlore.Music.Chords;

/// <summary>The families of chords that guitarists name, as one table (common practice; symbols as in lead sheets).</summary>
public static class ChordFamilies
{
    // Letters, signs, formula, tones that must sound, rarity. The fifth may be left out where it is perfect; a seventh chord
    // may even lack its third, at a price.
    public static ImmutableArray<ChordFamily> All { get; } =
    [
        new("", "", "1 3 5", "1 3", 0),
        new("m", "–", "1 b3 5", "1 b3", 0),
        new("5", "5", "1 5", "1 5", 0.1),
        new("sus4", "sus4", "1 4 5", "1 4", 0.7),
        new("sus2", "sus2", "1 2 5", "1 2", 0.75),
        new("dim", "°", "1 b3 b5", "1 b3 b5", 0.7),
        new("aug", "+", "1 3 #5", "1 3 #5", 0.8),
        new("(b5)", "(b5)", "1 3 b5", "1 3 b5", 1.6),
        new("5(b5)", "5(b5)", "1 b5", "1 b5", 1.5),
        new("6", "6", "1 3 5 6", "1 3 6", 0.8),
        new("m6", "–6", "1 b3 5 6", "1 b3 6", 0.8),
        new("6sus4", "6sus4", "1 4 5 6", "1 4 5 6", 2.2),
        new("6sus2", "6sus2", "1 2 5 6", "1 2 5 6", 2.2),
        new("{7}", "{7}", "1 3 5 b7", "1 b7", 0.4),
        new("maj{7}", "△{7}", "1 3 5 7", "1 7", 0.4),
        new("m{7}", "–{7}", "1 b3 5 b7", "1 b3 b7", 0.4),
        new("m(maj{7})", "–△{7}", "1 b3 5 7", "1 b3 7", 1.0),
        new("dim7", "°7", "1 b3 b5 bb7", "1 b3 b5 bb7", 0.6),
        new("m{7}b5", "ø{7}", "1 b3 b5 b7", "1 b3 b5 b7", 0.7),
        new("dim(maj{7})", "°△{7}", "1 b3 b5 7", "1 b3 b5 7", 1.5),
        new("{7}b5", "{7}b5", "1 3 b5 b7", "1 3 b5 b7", 1.2),
        new("{7}#5", "+{7}", "1 3 #5 b7", "1 3 #5 b7", 1.0),
        new("maj{7}b5", "△{7}b5", "1 3 b5 7", "1 3 b5 7", 1.4),
        new("maj{7}#5", "+△{7}", "1 3 #5 7", "1 3 #5 7", 1.3),
        new("m{7}#5", "–{7}#5", "1 b3 #5 b7", "1 b3 #5 b7", 3.0),
        new("{7}sus4", "{7}sus4", "1 4 5 b7", "1 4 b7", 0.8),
        new("{7}sus2", "{7}sus2", "1 2 5 b7", "1 2 5 b7", 1.6),
        new("maj{7}sus4", "△{7}sus4", "1 4 5 7", "1 4 5 7", 1.6),
        new("maj{7}sus2", "△{7}sus2", "1 2 5 7", "1 2 5 7", 1.6),
        new("{7}#5sus4", "+{7}sus4", "1 4 #5 b7", "1 4 #5 b7", 2.6),
        new("maj{7}#5sus4", "+△{7}sus4", "1 4 #5 7", "1 4 #5 7", 2.6),
        new("m#5", "–#5", "1 b3 #5", "1 b3 #5", 3.0),
    ];

    public static ChordFamily Major => All[0];

    public static ChordFamily Minor => All[1];

    public static ChordFamily Power => All[2];
}
