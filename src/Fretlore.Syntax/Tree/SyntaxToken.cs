using System.Text;

namespace Fretlore.Syntax;

/// <summary>The smallest piece of the tree: some characters with the blanks and comments in front of them.</summary>
/// <param name="kind">What it is.</param>
/// <param name="text">Its characters; empty when missing or at the end of the file.</param>
/// <param name="start">Index of its first character in the source.</param>
/// <param name="leadingTrivia">Blanks, line ends and comments between the token before and this one, as written.</param>
/// <param name="isMissing">True when the parser needed it and it is not there.</param>
public sealed class SyntaxToken(TokenKind kind, string text, int start, string leadingTrivia = "", bool isMissing = false) : SyntaxElement
{
    public TokenKind Kind { get; } = kind;

    public string Text { get; } = text;

    public string LeadingTrivia { get; } = leadingTrivia;

    public bool IsMissing { get; } = isMissing;

    public override TextSpan Span { get; } = new(start, text.Length);

    public override void WriteTo(StringBuilder text) => text.Append(LeadingTrivia).Append(Text);

    public override string ToString() => IsMissing ? $"missing {Kind}" : Text;
}
