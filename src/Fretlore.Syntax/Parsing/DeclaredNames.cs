namespace Fretlore.Syntax.Parsing;

/// <summary>The names of a sheet's parts and riffs, gathered before it is parsed: a section's lines are told apart by them.</summary>
internal sealed class DeclaredNames
{
    private DeclaredNames(HashSet<string> parts, HashSet<string> riffs) => (Parts, Riffs) = (parts, riffs);

    public HashSet<string> Parts { get; }

    public HashSet<string> Riffs { get; }

    /// <summary>True for a word that at the start of a section's line names a part, or was probably meant to.</summary>
    public bool CouldBePart(string word) => Parts.Contains(word) || IsNearPart(word) || IsUnknown(word);

    /// <summary>True for a word that could be a name and is none of this sheet's.</summary>
    public bool IsUnknown(string word) =>
        Names.IsName(word) && !Vocabulary.IsReservedForRiffs(word) && !Riffs.Contains(word) && !Names.IsStrokes(word) && !Names.BeginsEvent(word);

    /// <summary>True for an unknown word that is a slip away from a part's name.</summary>
    public bool IsNearPart(string word) => IsUnknown(word) && Nearest.To(word, Parts) is not null;

    public static DeclaredNames In(string text)
    {
        HashSet<string> parts = [], riffs = [];
        var line = 0;
        while (line < text.Length)
        {
            if (text.AsSpan(line).StartsWith("part ")) Add(parts, text, line + 5);
            else if (text.AsSpan(line).StartsWith("riff ")) Add(riffs, text, line + 5);
            line = Lines.NextBlock(text, line);
        }
        return new DeclaredNames(parts, riffs);
    }

    private static void Add(HashSet<string> names, string text, int at)
    {
        while (at < text.Length && text[at] is ' ' or '\t') at++;
        var end = at;
        while (end < text.Length && Names.IsNameCharacter(text[end])) end++;
        if (end > at) names.Add(text[at..end]);
    }
}
