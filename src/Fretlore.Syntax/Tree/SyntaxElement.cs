using System.Text;

namespace Fretlore.Syntax;

/// <summary>A token or a node of the lossless tree.</summary>
public abstract class SyntaxElement
{
    /// <summary>From the first character to the last, without the trivia in front.</summary>
    public abstract TextSpan Span { get; }

    /// <summary>Appends the source text of this element, trivia and skipped text included.</summary>
    public abstract void WriteTo(StringBuilder text);

    /// <summary>The source text of this element, trivia and skipped text included.</summary>
    public string ToFullString()
    {
        var text = new StringBuilder();
        WriteTo(text);
        return text.ToString();
    }
}
