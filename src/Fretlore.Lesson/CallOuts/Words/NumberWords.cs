namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>Whole numbers as spoken words and back: "seven", "twenty-one", "one hundred four".</summary>
internal static class NumberWords
{
    private static readonly string[] Small =
    [
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen",
        "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
    ];

    private static readonly string[] Tens = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

    private static readonly string[] Ordinals =
    [
        "", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth",
        "thirteenth", "fourteenth", "fifteenth", "sixteenth", "seventeenth", "eighteenth", "nineteenth", "twentieth",
    ];

    /// <summary>A number from 0 up, without "and" and without digits.</summary>
    public static string Of(long number)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(number);
        if (number >= 1000) return Join(Of(number / 1000) + " thousand", number % 1000);
        if (number >= 100) return Join(Small[number / 100] + " hundred", number % 100);
        if (number < 20) return Small[number];
        var tens = Tens[number / 10];
        return number % 10 == 0 ? tens : tens + "-" + Small[number % 10];
    }

    /// <summary>"first" to "ninety-ninth"; higher ones as "number one hundred".</summary>
    public static string Ordinal(int number) => number switch
    {
        > 0 and <= 20 => Ordinals[number],
        > 20 and < 100 => number % 10 == 0 ? Tens[number / 10][..^1] + "ieth" : $"{Tens[number / 10]}-{Ordinals[number % 10]}",
        _ => "number " + Of(number),
    };

    /// <summary>"once", "twice", "three times".</summary>
    public static string Times(int count) => count switch { 1 => "once", 2 => "twice", _ => Of(count) + " times" };

    /// <summary>The number an ordinal word names, 1 to 99; 0 when it is none.</summary>
    public static int OrdinalValue(string word)
    {
        if (word.Length == 0) return 0;
        if (Array.IndexOf(Ordinals, word) is > 0 and var small) return small;
        return Math.Max(0, Enumerable.Range(21, 79).FirstOrDefault(number => Ordinal(number) == word));
    }

    /// <summary>Reads a number at a place in a row of words.</summary>
    public static bool TryRead(IReadOnlyList<string> words, ref int at, out int number)
    {
        if (at >= words.Count || !TryUnder100(words[at], out number))
        {
            number = 0;
            return false;
        }
        at++;
        foreach (var (scale, factor) in new[] { ("hundred", 100), ("thousand", 1000) })
        {
            if (at >= words.Count || words[at] != scale) continue;
            at++;
            number *= factor;
            var rest = at;
            if (!TryRead(words, ref rest, out var more) || more >= factor) continue;
            number += more;
            at = rest;
        }
        return true;
    }

    /// <summary>True when a single word is a number.</summary>
    public static bool IsNumber(string word) => TryUnder100(word, out _);

    private static bool TryUnder100(string word, out int number)
    {
        number = Array.IndexOf(Small, word);
        if (number >= 0) return true;
        var parts = word.Split('-');
        number = 10 * Array.IndexOf(Tens, parts[0]);
        if (number <= 0 || parts.Length > 2) return false;
        if (parts.Length == 1) return true;
        var ones = Array.IndexOf(Small, parts[1]);
        number += ones;
        return ones is > 0 and < 10;
    }

    private static string Join(string large, long rest) => rest == 0 ? large : large + " " + Of(rest);
}
