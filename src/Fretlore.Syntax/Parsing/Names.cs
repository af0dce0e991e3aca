namespace Fretlore.Syntax.Parsing;

/// <summary>What a name may look like, and which words of music are events instead.</summary>
internal static class Names
{
    public static bool IsNameCharacter(char c) => char.IsLetterOrDigit(c) || c is '.' or '-';

    public static bool IsDigit(char c) => c is >= '0' and <= '9';

    public static bool IsTimeLetter(char c) => c is 'W' or 'H' or 'Q' or 'E' or 'S' or 'Y' or 'Z';

    /// <summary>A lowercase letter, then at least one letter, digit, dot or dash.</summary>
    public static bool IsName(ReadOnlySpan<char> word)
    {
        if (word.Length < 2 || !char.IsLower(word[0])) return false;
        foreach (var c in word)
        {
            if (!IsNameCharacter(c)) return false;
        }
        return true;
    }

    /// <summary>True for <c>d</c>, <c>u</c> and rows of them: strokes of the picking hand.</summary>
    public static bool IsStrokes(ReadOnlySpan<char> word) => word.Length > 0 && word.IndexOfAnyExcept('d', 'u') < 0;

    /// <summary>
    /// True when music that stands at the start of <paramref name="rest"/> is an event and not a word:
    /// <c>[g] [d|u] [t]</c> and a fret, a dead note with its marks, a rest, a hold, a bracket, a shape or a raise.
    /// </summary>
    public static bool BeginsEvent(ReadOnlySpan<char> rest)
    {
        var i = 0;
        if (At(rest, i) == 'g') i++;
        if (At(rest, i) is 'd' or 'u') i++;
        var roll = rest[i..].StartsWith("roll-down") ? 9 : rest[i..].StartsWith("roll") || rest[i..].StartsWith("rake") ? 4 : 0;
        if (roll > 0 && At(rest, i + roll) is '[' or '#') return true;
        if (At(rest, i) is '[' or '#' or '=') return true;
        if (At(rest, i) == 'R') return !char.IsLetterOrDigit(At(rest, i + 1));
        if (At(rest, i) == 't') i++;
        if (At(rest, i) == '+') return true;
        if (IsDigit(At(rest, i))) return true;
        return At(rest, i) == 'x' && IsDeadNote(rest[(i + 1)..]);
    }

    /// <summary>What may follow an <c>x</c>: a fret, or marks up to the end of the word; <c>xm</c> is a dead note, <c>xylo</c> a word.</summary>
    private static bool IsDeadNote(ReadOnlySpan<char> rest)
    {
        if (IsDigit(At(rest, 0))) return true;
        for (var i = 0; i < rest.Length && IsNameCharacter(rest[i]); i++)
        {
            if (rest[i] == 'f' && IsDigit(At(rest, i + 1))) i++;
            else if (rest[i] is not ('v' or 'm' or '-')) return false;
        }
        return true;
    }

    private static char At(ReadOnlySpan<char> text, int index) => index < text.Length ? text[index] : '\0';
}
