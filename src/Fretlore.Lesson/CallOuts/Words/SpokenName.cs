using System.Text;
using Fretlore.Music;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>A name of the sheet as it is said: "furnace.turn" is "furnace turn", "riff2" is "riff two".</summary>
internal static class SpokenName
{
    public static string Of(string name)
    {
        var words = new StringBuilder();
        for (var i = 0; i < name.Length;)
        {
            var start = i;
            if (char.IsAsciiDigit(name[i]))
            {
                while (i < name.Length && char.IsAsciiDigit(name[i])) i++;
                Append(words, Digits(name[start..i]));
            }
            else if (char.IsLetter(name[i]) || name[i] == '\'')
            {
                while (i < name.Length && (char.IsLetter(name[i]) || name[i] == '\'')) i++;
                Append(words, name[start..i].ToLowerInvariant());
            }
            else
            {
                i++;
            }
        }
        return words.Length == 0 ? "nameless" : words.ToString();
    }

    /// <summary>A shape's name; one that is a chord symbol in small letters is said as the chord: "gm" is "G minor".</summary>
    public static string OfShape(string name)
    {
        var root = name.Length > 1 && name[1] is 'b' or '#' ? 2 : 1;
        if (name.Length < 2 || !NoteName.TryParse(name.AsSpan(0, root), out var note)
            || !ChordKinds.Contains(name[root..])) return Of(name);
        var kind = ChordWords.Kind(name[root..]);
        return PitchWords.Of(note) + (kind.Length == 0 ? "" : " " + kind);
    }

    private static readonly string[] ChordKinds = ["", "m", "7", "m7", "maj7", "5", "sus2", "sus4", "dim", "6", "m6", "9", "add9"];

    private static void Append(StringBuilder words, string word)
    {
        if (words.Length > 0) words.Append(' ');
        // A letter alone is said as a letter, not as the article.
        words.Append(word.Length == 1 ? word.ToUpperInvariant() : word);
    }

    // Long rows of digits are said one by one.
    private static string Digits(string digits) => digits.Length <= 3
        ? NumberWords.Of(int.Parse(digits, System.Globalization.CultureInfo.InvariantCulture))
        : string.Join(' ', digits.Select(d => NumberWords.Of(d - '0')));
}
