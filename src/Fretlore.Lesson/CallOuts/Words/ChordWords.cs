using System.Text;
using Fretlore.Music;
using Fretlore.Reading;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>Chord symbols as spoken: "A minor eleven", "F sharp half-diminished over C".</summary>
internal static class ChordWords
{
    // Longest first; usual chord-symbol signs (common practice).
    private static readonly (string Sign, string Words)[] Signs =
    [
        ("maj", "major"), ("Maj", "major"), ("dim", "diminished"), ("aug", "augmented"), ("sus", "suspended"), ("add", "add"),
        ("omit", "without the"),
        ("no", "without the"), ("alt", "altered"), ("min", "minor"), ("M", "major"), ("Δ", "major"), ("ø", "half-diminished"),
        ("°", "diminished"), ("o", "diminished"),
        ("+", "augmented"), ("m", "minor"), ("-", "minor"), ("#", "sharp"), ("b", "flat"), ("♯", "sharp"), ("♭", "flat"),
    ];

    public static string Of(ChordReading chord)
    {
        var kind = Kind(chord.Kind);
        if (chord.Kind == "5" && chord.Bass == chord.Root)
        {
            var article = chord.Root.Step is Step.A or Step.E or Step.F ? "an " : "a ";
            return article + PitchWords.Of(chord.Root) + " power chord";
        }
        var text = PitchWords.Of(chord.Root) + (kind.Length == 0 ? " major" : " " + kind);
        return chord.Bass == chord.Root ? text : $"{text} over {PitchWords.Of(chord.Bass)}";
    }

    /// <summary>A kind such as <c>m7b5</c> in words.</summary>
    internal static string Kind(string kind)
    {
        if (kind == "5") return "power chord";
        if (kind is "m7b5") return "half-diminished";
        var words = new StringBuilder();
        for (var at = 0; at < kind.Length;)
        {
            if (char.IsAsciiDigit(kind[at]))
            {
                var end = at;
                while (end < kind.Length && char.IsAsciiDigit(kind[end])) end++;
                foreach (var number in Degrees(kind[at..end])) Append(words, NumberWords.Of(number));
                at = end;
                continue;
            }
            var sign = Array.Find(Signs, s => kind.AsSpan(at).StartsWith(s.Sign, StringComparison.Ordinal));
            if (sign.Sign is null)
            {
                at++;
                continue;
            }
            Append(words, sign.Words);
            at += sign.Sign.Length;
        }
        return words.ToString();
    }

    // "69" is six nine; 11 and 13 are one degree.
    private static IEnumerable<int> Degrees(string digits)
    {
        var value = int.Parse(digits[..Math.Min(digits.Length, 4)], System.Globalization.CultureInfo.InvariantCulture);
        return value <= 15 ? [value] : digits.Select(d => d - '0');
    }

    private static void Append(StringBuilder words, string word)
    {
        if (words.Length > 0) words.Append(' ');
        words.Append(word);
    }
}
