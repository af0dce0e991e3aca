using System.Text;

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
        // A letter alone is said as a letter, not as the article.
        if (words.Length == 1) return words.ToString().ToUpperInvariant();
        return words.Length == 0 ? "nameless" : words.ToString();
    }

    private static void Append(StringBuilder words, string word)
    {
        if (words.Length > 0) words.Append(' ');
        words.Append(word);
    }

    // Long rows of digits are said one by one.
    private static string Digits(string digits) => digits.Length <= 3
        ? NumberWords.Of(int.Parse(digits, System.Globalization.CultureInfo.InvariantCulture))
        : string.Join(' ', digits.Select(d => NumberWords.Of(d - '0')));
}
