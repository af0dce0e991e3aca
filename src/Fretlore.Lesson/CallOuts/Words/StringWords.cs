using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Lesson.CallOuts.Words;

/// <summary>The strings of one neck as a teacher calls them.</summary>
/// <param name="Tuning">The open strings.</param>
/// <param name="Naming">How single strings are called.</param>
internal sealed record StringWords(Tuning Tuning, StringNaming Naming)
{
    private int Count => Tuning.StringCount;

    /// <summary>One string, without article: "low string", "fifth string", "low A string".</summary>
    public string One(StringNumber number)
    {
        if (Naming == StringNaming.Pitch) return PitchName(number) + " string";
        if (Naming == StringNaming.LowString && number.Value == Count && Count > 1) return "low string";
        return NumberWords.Ordinal(number.Value) + " string";
    }

    /// <summary>Strings sounded together, low to high, without article: "low three strings", "fifth and fourth strings".</summary>
    public string Several(ValueList<StringNumber> lowToHigh)
    {
        if (lowToHigh.Count == 1) return One(lowToHigh[0]);
        if (IsBlock(lowToHigh))
        {
            if (lowToHigh.Count == Count) return $"all {NumberWords.Of(Count)} strings";
            if (lowToHigh[0].Value == Count) return $"low {NumberWords.Of(lowToHigh.Count)} strings";
            if (lowToHigh[^1].Value == 1) return $"high {NumberWords.Of(lowToHigh.Count)} strings";
            if (lowToHigh.Count > 2) return $"strings {NumberWords.Of(lowToHigh[0].Value)} to {NumberWords.Of(lowToHigh[^1].Value)}";
        }
        var ordinals = lowToHigh.Select(s => NumberWords.Ordinal(s.Value)).ToArray();
        return string.Join(", ", ordinals[..^1]) + " and " + ordinals[^1] + " strings";
    }

    /// <summary>As <see cref="Several"/>, with the article where there is one.</summary>
    public string TheSeveral(ValueList<StringNumber> lowToHigh)
    {
        var name = Several(lowToHigh);
        return name.StartsWith("all ", StringComparison.Ordinal) || name.StartsWith("strings ", StringComparison.Ordinal) ? name
            : "the " + name;
    }

    public static bool IsBlock(ValueList<StringNumber> lowToHigh)
    {
        for (var i = 1; i < lowToHigh.Count; i++)
        {
            if (lowToHigh[i].Value != lowToHigh[i - 1].Value - 1) return false;
        }
        return true;
    }

    /// <summary>Reads strings at a place in a row of words; articles and "and" are taken out before.</summary>
    public bool TryRead(IReadOnlyList<string> words, ref int at, out ValueList<StringNumber> strings)
    {
        strings = default;
        for (var number = Count; number >= 1; number--)
        {
            if (!Matches(words, ref at, One(new StringNumber(number)))) continue;
            strings = [new StringNumber(number)];
            return true;
        }
        return TryBlock(words, ref at, out strings) || TryRange(words, ref at, out strings) || TryOrdinals(words, ref at, out strings);
    }

    private bool TryBlock(IReadOnlyList<string> words, ref int at, out ValueList<StringNumber> strings)
    {
        strings = default;
        var place = at;
        if (place >= words.Count || words[place] is not ("low" or "high" or "all")) return false;
        var edge = words[place++];
        if (!NumberWords.TryRead(words, ref place, out var size) || size < 2 || size > Count) return false;
        if (place >= words.Count || words[place++] != "strings") return false;
        var low = edge == "high" ? size : Count;
        strings = Enumerable.Range(0, size).Select(i => new StringNumber(low - i)).ToValueList();
        at = place;
        return true;
    }

    private bool TryRange(IReadOnlyList<string> words, ref int at, out ValueList<StringNumber> strings)
    {
        strings = default;
        var place = at + 1;
        if (at >= words.Count || words[at] != "strings" || !NumberWords.TryRead(words, ref place, out var low) || low > Count) return false;
        if (place >= words.Count || words[place++] != "to" || !NumberWords.TryRead(words, ref place, out var high)
            || high >= low) return false;
        strings = Enumerable.Range(0, low - high + 1).Select(i => new StringNumber(low - i)).ToValueList();
        at = place;
        return true;
    }

    private bool TryOrdinals(IReadOnlyList<string> words, ref int at, out ValueList<StringNumber> strings)
    {
        strings = default;
        var place = at;
        var numbers = new List<StringNumber>();
        while (place < words.Count && NumberWords.OrdinalValue(words[place]) is > 0 and var number && number <= Count)
        {
            numbers.Add(new StringNumber(number));
            place++;
            if (place < words.Count && words[place] == ",") place++;
        }
        if (numbers.Count < 2 || place >= words.Count || words[place++] != "strings") return false;
        strings = numbers.ToValueList();
        at = place;
        return true;
    }

    private static bool Matches(IReadOnlyList<string> words, ref int at, string name)
    {
        var parts = name.Split(' ');
        if (at + parts.Length > words.Count) return false;
        for (var i = 0; i < parts.Length; i++)
        {
            if (!string.Equals(words[at + i], parts[i], StringComparison.OrdinalIgnoreCase)) return false;
        }
        at += parts.Length;
        return true;
    }

    // The lowest and highest of several strings of one name say so; those between are told apart by number.
    private string PitchName(StringNumber number)
    {
        var name = Tuning[number].Name;
        var same = Enumerable.Range(1, Count).Select(s => new StringNumber(s)).Where(s => Tuning[s].Name == name).ToArray();
        if (same.Length == 1) return PitchWords.Of(name);
        if (number == same[^1]) return "low " + PitchWords.Of(name);
        return number == same[0] ? "high " + PitchWords.Of(name) : NumberWords.Ordinal(number.Value);
    }
}
