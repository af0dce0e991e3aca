using System.Collections.Immutable;

namespace Fretlore.Syntax.Parsing;

/// <summary>Cuts the values of settings, names and changes: plain words, numbers, quoted texts and a few signs.</summary>
internal static class Values
{
    /// <summary>Signs that end a word and stand alone.</summary>
    private const string Signs = "=,()[]";

    public static SyntaxToken Next(Cursor cursor, string alsoSigns = "")
    {
        var c = cursor.Current;
        if (c == '"') return Text(cursor);
        if (IsSign(c)) return cursor.TakeSign();
        var end = EndOfWord(cursor.Next);
        // Parentheses within a word belong to it: (chord Am(maj7)).
        while (end < cursor.Limit && cursor.Text[end] == '(')
        {
            var inner = EndOfWord(end + 1);
            if (inner == cursor.Limit || cursor.Text[inner] != ')') break;
            end = EndOfWord(inner + 1);
        }
        var isNumber = cursor.Text.AsSpan(cursor.Next, end - cursor.Next).IndexOfAnyExceptInRange('0', '9') < 0;
        return cursor.Take(isNumber ? TokenKind.Number : TokenKind.Word, end);

        int EndOfWord(int at) => cursor.EndOfRun(at, c => c != '"' && !IsSign(c) && !char.IsWhiteSpace(c));

        bool IsSign(char c) => Signs.Contains(c) || alsoSigns.Contains(c);
    }

    /// <summary>All values up to the limit.</summary>
    public static ImmutableArray<SyntaxToken> Rest(Cursor cursor)
    {
        var values = ImmutableArray.CreateBuilder<SyntaxToken>();
        while (!cursor.AtEnd) values.Add(Next(cursor));
        return values.DrainToImmutable();
    }

    /// <summary>A text in double quotes. It ends at the end of its line at the latest, so that a forgotten quote spoils one line only.</summary>
    public static SyntaxToken Text(Cursor cursor)
    {
        var start = cursor.Next;
        var rest = cursor.Text.AsSpan(start + 1, cursor.EndOfLine(start) - start - 1);
        var close = rest.IndexOf('"');
        if (close >= 0) return cursor.Take(TokenKind.Text, start + close + 2);
        cursor.Findings.Add(SyntaxDiagnostics.UnclosedQuote(new TextSpan(start, 1)));
        return cursor.Take(TokenKind.Text, start + 1 + rest.TrimEnd().Length);
    }

    /// <summary>A whole number; a missing token when there is none, unreported.</summary>
    public static SyntaxToken Number(Cursor cursor)
    {
        var end = cursor.EndOfRun(cursor.Next, Names.IsDigit);
        if (end == cursor.Next) return cursor.Missing(TokenKind.Number);
        var token = cursor.Take(TokenKind.Number, end);
        if (token.Text.Length > 4) cursor.Findings.Add(SyntaxDiagnostics.NumberTooLarge(token.Span));
        return token;
    }

    /// <summary>True when exactly this word comes next.</summary>
    public static bool AtWord(Cursor cursor, string word)
    {
        var end = cursor.Next + word.Length;
        return end <= cursor.Limit && cursor.Text.AsSpan(cursor.Next, word.Length).SequenceEqual(word)
            && (end == cursor.Limit || !Names.IsNameCharacter(cursor.Text[end]));
    }
}
