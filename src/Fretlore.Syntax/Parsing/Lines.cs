namespace Fretlore.Syntax.Parsing;

/// <summary>Lines of a sheet: where they end, and which of them begin a block.</summary>
internal static class Lines
{
    public static int EndOfLine(string text, int at)
    {
        var end = text.AsSpan(at).IndexOfAny('\r', '\n');
        return end < 0 ? text.Length : at + end;
    }

    /// <summary>The start of the line after the one <paramref name="at"/> stands in.</summary>
    public static int NextLine(string text, int at)
    {
        var end = EndOfLine(text, at);
        if (end + 1 < text.Length && text[end] == '\r' && text[end + 1] == '\n') return end + 2;
        return Math.Min(end + 1, text.Length);
    }

    /// <summary>The start of the first line after <paramref name="at"/>'s that begins at the margin, comments apart.</summary>
    public static int NextBlock(string text, int at)
    {
        for (var line = NextLine(text, at); line < text.Length; line = NextLine(text, line))
        {
            if (!char.IsWhiteSpace(text[line]) && !Cursor.IsComment(text, line)) return line;
        }
        return text.Length;
    }
}
