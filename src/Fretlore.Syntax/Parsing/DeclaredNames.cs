namespace Fretlore.Syntax.Parsing;

/// <summary>The names of a sheet's parts and riffs, gathered before it is parsed: a section's lines are told apart by them.</summary>
internal sealed class DeclaredNames
{
    private DeclaredNames(HashSet<string> parts, HashSet<string> riffs) => (Parts, Riffs) = (parts, riffs);

    public HashSet<string> Parts { get; }

    public HashSet<string> Riffs { get; }

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
