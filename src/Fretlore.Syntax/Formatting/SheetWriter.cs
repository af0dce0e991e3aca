using System.Text;

namespace Fretlore.Syntax.Formatting;

/// <summary>Writes lines: texts with blanks between them, comments where they stood.</summary>
internal sealed class SheetWriter(string lineEnd)
{
    private readonly StringBuilder text = new();

    /// <summary>Characters on the line so far.</summary>
    public int Column { get; private set; }

    private bool IsEmpty => text.Length == 0;

    /// <summary>Begins a line, after the comments that stand before its first token.</summary>
    /// <param name="trivia">What stands before that token.</param>
    /// <param name="indent">Blanks at the line's start.</param>
    /// <param name="commentIndent">Blanks before an indented comment on a line of its own; comments at the margin stay there if this is null.</param>
    /// <param name="blankLine">True for an empty line before it even where there was none.</param>
    public void Line(Trivia trivia, int indent, int? commentIndent = null, bool blankLine = false)
    {
        var owed = blankLine && !trivia.HasBlankLine;
        foreach (var comment in trivia.Comments)
        {
            if (!comment.OwnLine)
            {
                Append(IsEmpty ? comment.Text : "  " + comment.Text);
                continue;
            }
            NewLine(owed || comment.AfterBlankLine);
            owed = false;
            Append(new string(' ', commentIndent ?? (comment.Indented ? 2 : 0)) + comment.Text);
        }
        NewLine(owed || trivia.AfterBlankLine);
        Append(new string(' ', indent));
    }

    public void Append(string piece)
    {
        text.Append(piece);
        Column += piece.Length;
    }

    public void PadTo(int column)
    {
        if (Column < column) Append(new string(' ', column - Column));
    }

    /// <summary>The whole text, with the comments at the end of the file.</summary>
    public string Finish(Trivia end)
    {
        Line(end with { AfterBlankLine = false }, 0);
        return text.ToString();
    }

    private void NewLine(bool blankLine)
    {
        if (IsEmpty) return;
        text.Append(lineEnd);
        if (blankLine) text.Append(lineEnd);
        Column = 0;
    }
}
