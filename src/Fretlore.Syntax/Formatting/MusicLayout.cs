namespace Fretlore.Syntax.Formatting;

/// <summary>Lays music out in lines of about a hundred characters.</summary>
/// <remarks>
/// The writer's own line ends after bar lines, braces and commas stay. Lines that are too long are broken at bar lines, and within a bar
/// only when the bar alone is too long.
/// </remarks>
internal static class MusicLayout
{
    private const int LongestLine = 100;

    /// <summary>Writes chunks, the first one where the writer stands or, with comments before it, on a line of its own.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="chunks">What.</param>
    /// <param name="indent">Blanks at the start of the lines to come.</param>
    /// <param name="beginsLine">True when the first chunk begins a line even without comments.</param>
    /// <param name="mayBegin">False for a chunk that would be read otherwise at the start of a line; null when any may.</param>
    public static void Write(
        SheetWriter writer, IReadOnlyList<Chunk> chunks, int indent, bool beginsLine, Func<string, bool>? mayBegin = null)
    {
        var isTooLong = false;
        for (var i = 0; i < chunks.Count; i++)
        {
            var chunk = chunks[i];
            var lineIndent = indent + (2 * chunk.Depth);
            if (i == 0 || chunks[i - 1].EndsBar || IsKept(chunks, i))
            {
                var width = WidthToBarLine(chunks, i);
                isTooLong = lineIndent + width > LongestLine;
                var fits = writer.Column + 1 + width <= LongestLine || mayBegin?.Invoke(chunk.Text) == false;
                if (i == 0 ? beginsLine || chunk.HasComments : IsKept(chunks, i) || !fits) writer.Line(Before(chunk), lineIndent, lineIndent);
                else if (i > 0) writer.Append(" ");
            }
            else if (isTooLong && chunk.Text is not ("|" or "||" or "}") && writer.Column + 1 + chunk.Text.Length > LongestLine
                && mayBegin?.Invoke(chunk.Text) != false)
            {
                writer.Line(Before(chunk) with { AfterBlankLine = false }, lineIndent, lineIndent);
            }
            else
            {
                writer.Append(" ");
            }
            writer.Append(chunk.Text);
        }
    }

    private static Trivia Before(Chunk chunk) => chunk.Before ?? Trivia.None;

    /// <summary>True where the writer's own line end stays, and wherever a comment stands.</summary>
    private static bool IsKept(IReadOnlyList<Chunk> chunks, int i) =>
        i > 0 && (chunks[i].HasComments || (chunks[i].BeginsLine && chunks[i - 1].Text[^1] is '|' or '{' or '}' or ','));

    /// <summary>The width from chunk <paramref name="i"/> up to and with its bar line, or up to the next line end that stays.</summary>
    private static int WidthToBarLine(IReadOnlyList<Chunk> chunks, int i)
    {
        var width = chunks[i].Text.Length;
        while (!chunks[i].EndsBar && ++i < chunks.Count && !IsKept(chunks, i)) width += 1 + chunks[i].Text.Length;
        return width;
    }
}
