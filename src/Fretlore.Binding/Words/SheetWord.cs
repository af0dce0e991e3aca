using System.Collections.Immutable;
using Fretlore.Syntax;

namespace Fretlore.Binding.Words;

/// <summary>One word of a setting's values.</summary>
/// <param name="Text">Its characters; a quoted text without its quotes.</param>
/// <param name="Span">Where it stands.</param>
/// <param name="IsQuoted">True for text between double quotes.</param>
internal readonly record struct SheetWord(string Text, TextSpan Span, bool IsQuoted = false)
{
    public bool Is(string word) => !IsQuoted && Text.Equals(word, StringComparison.OrdinalIgnoreCase);

    public static ImmutableArray<SheetWord> From(ImmutableArray<SyntaxToken> tokens) =>
    [
        .. tokens.Where(t => !t.IsMissing && t.Text.Length > 0)
            .Select(t => new SheetWord(t.Kind == TokenKind.Text ? Unquote(t.Text) : t.Text, t.Span, t.Kind == TokenKind.Text)),
    ];

    /// <summary>The words with single blanks between them.</summary>
    public static string Join(IEnumerable<SheetWord> words) => string.Join(' ', words.Select(w => w.Text));

    public static string Unquote(string text)
    {
        var inner = text.StartsWith('"') ? text[1..] : text;
        return inner.EndsWith('"') ? inner[..^1] : inner;
    }
}
