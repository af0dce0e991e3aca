namespace Fretlore.Syntax.Formatting;

/// <summary>A comment between two tokens.</summary>
/// <param name="Text">From its dashes on, without blanks at its end.</param>
/// <param name="OwnLine">True when nothing but blanks stands before it on its line.</param>
/// <param name="Indented">True when blanks stand before it on its line.</param>
/// <param name="AfterBlankLine">True when an empty line stands before it.</param>
internal readonly record struct Comment(string Text, bool OwnLine, bool Indented, bool AfterBlankLine);

/// <summary>What stands in front of a token, apart from plain blanks.</summary>
/// <param name="Comments">In the order written.</param>
/// <param name="HasLineEnd">True when the token begins a line.</param>
/// <param name="AfterBlankLine">True when an empty line stands right before the token's own.</param>
internal sealed record Trivia(IReadOnlyList<Comment> Comments, bool HasLineEnd, bool AfterBlankLine)
{
    public static Trivia None { get; } = new([], false, false);

    public bool HasBlankLine => AfterBlankLine || Comments.Any(c => c.AfterBlankLine);

    public static Trivia Of(SyntaxToken token) => token.LeadingTrivia.Length == 0 ? None : Read(token.LeadingTrivia, token.Span.Start);

    private static Trivia Read(string text, int tokenStart)
    {
        var comments = new List<Comment>();
        var startsFile = tokenStart == text.Length;
        var (lineEnds, hasLineEnd, lineStart) = (0, startsFile, 0);
        for (var at = 0; at < text.Length;)
        {
            if (text[at] is '\r' or '\n')
            {
                at += text[at] == '\r' && at + 1 < text.Length && text[at + 1] == '\n' ? 2 : 1;
                (lineEnds, hasLineEnd, lineStart) = (lineEnds + 1, true, at);
            }
            else if (char.IsWhiteSpace(text[at]))
            {
                at++;
            }
            else
            {
                var end = Parsing.Lines.EndOfLine(text, at);
                comments.Add(new Comment(text[at..end].TrimEnd(), hasLineEnd, at > lineStart, lineEnds > 1));
                (at, lineEnds) = (end, 0);
            }
        }
        return new Trivia(comments, hasLineEnd, lineEnds > 1);
    }
}
