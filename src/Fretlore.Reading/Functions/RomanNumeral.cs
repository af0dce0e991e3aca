using Fretlore.Music;
using Fretlore.Music.Chords;

namespace Fretlore.Reading.Functions;

/// <summary>Roman numerals counted from the major scale on the tonic (common practice for modal music).</summary>
internal static class RomanNumeral
{
    internal static string Of(ChordName chord, NoteName tonic)
    {
        var degree = Interval.Between(tonic, chord.Root);
        return Sign(degree.Alteration) + Cased(degree.Steps, chord.Kind.Family.Third == 3) + Quality(chord.Kind);
    }

    /// <summary>The numeral of a degree alone, for the goal of a secondary dominant.</summary>
    internal static string Degree(ChordName chord, NoteName tonic)
    {
        var degree = Interval.Between(tonic, chord.Root);
        return Sign(degree.Alteration) + Cased(degree.Steps, chord.Kind.Family.Third == 3) + (chord.Kind.Family.Fifth == 6 ? "°" : "");
    }

    private static string Sign(int alteration) => new(alteration < 0 ? 'b' : '#', Math.Abs(alteration));

    private static string Cased(int steps, bool isMinor)
    {
        ReadOnlySpan<string> numerals = ["I", "II", "III", "IV", "V", "VI", "VII"];
        return isMinor ? numerals[steps].ToLowerInvariant() : numerals[steps];
    }

    // The case says minor, so the m is not written; circles and plus are the usual signs for the fifth.
    internal static string Quality(ChordKind kind)
    {
        var letters = kind.Symbol();
        if (kind.Family is { Third: 3, Fifth: 6 }) return kind.Symbol(ChordStyle.Signs).Replace("△", "maj", StringComparison.Ordinal);
        if (letters.StartsWith("m(maj", StringComparison.Ordinal)) return letters[1..];
        if (letters.StartsWith('m') && !letters.StartsWith("maj", StringComparison.Ordinal)) return letters[1..];
        return letters.StartsWith("aug", StringComparison.Ordinal) ? "+" + letters[3..] : letters;
    }
}
