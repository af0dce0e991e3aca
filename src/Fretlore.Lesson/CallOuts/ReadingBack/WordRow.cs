using Fretlore.Lesson.CallOuts.Words;

namespace Fretlore.Lesson.CallOuts.ReadingBack;

/// <summary>A sentence as a row of words with commas and colons, articles and little connecting words taken out, and a place in it.</summary>
internal sealed class WordRow
{
    private readonly string[] words;
    private int at;

    public WordRow(string sentence) => words = [.. Split(sentence.TrimEnd('.'))];

    public IReadOnlyList<string> Words => words;

    public bool IsAtEnd => at >= words.Length;

    public int Place
    {
        get => at;
        set => at = value;
    }

    public string Current => at < words.Length ? words[at] : "";

    public string Rest => string.Join(' ', words.Skip(at));

    public string Look(int ahead) => at + ahead < words.Length ? words[at + ahead] : "";

    /// <summary>Steps over a phrase if it stands here.</summary>
    public bool Take(string phrase)
    {
        var parts = phrase.Split(' ');
        for (var i = 0; i < parts.Length; i++)
        {
            if (Look(i) != parts[i]) return false;
        }
        at += parts.Length;
        return true;
    }

    public bool TakeNumber(out int number) => NumberWords.TryRead(words, ref at, out number);

    /// <summary>Reads the next number of a list; not one that counts "three times".</summary>
    public bool TakeBarNumber(out int number)
    {
        var start = at;
        if (Current == ",") at++;
        if (TakeNumber(out number) && Current != "times") return true;
        at = start;
        return false;
    }

    /// <summary>Reads "twice" or "three times".</summary>
    public bool TakeTimes(out int times)
    {
        times = 2;
        if (Take("twice")) return true;
        var start = at;
        if (TakeNumber(out times) && Take("times")) return true;
        at = start;
        return false;
    }

    public void SkipPauses()
    {
        while (Current is "," or ":") at++;
    }

    // A capital letter alone is a note's name, but for the article that opens a sentence.
    private static IEnumerable<string> Split(string sentence)
    {
        var raw = sentence.Replace(",", " ,", StringComparison.Ordinal).Replace(":", " :", StringComparison.Ordinal)
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i < raw.Length; i++)
        {
            var isNote = raw[i].Length == 1 && char.IsAsciiLetterUpper(raw[i][0])
                && (raw[i] != "A" || i > 0 || (i + 1 < raw.Length && raw[i + 1] is "string" or "sharp" or "flat" or "double"));
            var word = isNote ? raw[i] : raw[i].ToLowerInvariant();
            if (word is not ("the" or "a" or "an" or "and" or "then" or "it")) yield return word;
        }
    }
}
