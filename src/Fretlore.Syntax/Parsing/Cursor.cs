namespace Fretlore.Syntax.Parsing;

/// <summary>A place in a text that tokens are cut from, and the limit they may not pass.</summary>
/// <remarks>
/// Between <see cref="Position"/>, the end of the last token, and <see cref="Next"/>, the first character of the one to come, stand
/// blanks, line ends and comments: the next token's trivia. Nothing is ever dropped, so the tokens' texts add up to the source.
/// </remarks>
internal sealed class Cursor
{
    private static readonly string[] SingleCharacters = [.. Enumerable.Range(0, 128).Select(c => ((char)c).ToString())];

    private const int LongestKept = 12;

    private readonly string?[] kept = new string?[256];

    private int lineFrom;
    private int lineEnd = -1;

    public Cursor(string text, Findings findings)
    {
        Text = text;
        Findings = findings;
        Limit = text.Length;
        Next = SkipTrivia(0);
    }

    public string Text { get; }

    public Findings Findings { get; }

    /// <summary>The end of the last token.</summary>
    public int Position { get; private set; }

    /// <summary>The first character of the token to come; <see cref="Limit"/> when there is none.</summary>
    public int Next { get; private set; }

    public int Limit { get; private set; }

    public bool AtEnd => Next >= Limit;

    /// <summary>The next character, or NUL at the end: ask <see cref="AtEnd"/> where the two must be told apart.</summary>
    public char Current => Next < Limit ? Text[Next] : '\0';

    /// <summary>True when the next token follows the last one without a blank.</summary>
    public bool Touches => Next == Position && Next < Limit;

    public char Peek(int ahead) => Next + ahead < Limit ? Text[Next + ahead] : '\0';

    public bool Is(char c) => Next < Limit && Text[Next] == c;

    public bool TouchesAt(char c) => Touches && Text[Next] == c;

    /// <summary>Moves the limit, to a block's or a line's end, and returns the one before.</summary>
    public int LimitTo(int limit)
    {
        var before = Limit;
        Limit = limit;
        Next = SkipTrivia(Position);
        return before;
    }

    /// <summary>Cuts the token from <see cref="Next"/> up to <paramref name="end"/>.</summary>
    public SyntaxToken Take(TokenKind kind, int end)
    {
        var token = new SyntaxToken(kind, Slice(Next, end), Next, Slice(Position, Next));
        Position = end;
        Next = SkipTrivia(end);
        return token;
    }

    public SyntaxToken TakeSign(int length = 1) => Take(TokenKind.Sign, Next + length);

    /// <summary>A token that should be here and is not.</summary>
    public SyntaxToken Missing(TokenKind kind) => new(kind, "", Position, isMissing: true);

    /// <summary>The first index from <paramref name="at"/> on that is no blank, line end or comment; at most the limit.</summary>
    public int SkipTrivia(int at)
    {
        while (at < Limit)
        {
            var c = Text[at];
            if (char.IsWhiteSpace(c)) at++;
            else if (c == '-' && IsComment(Text, at)) at = EndOfLine(at);
            else break;
        }
        return Math.Min(at, Limit);
    }

    /// <summary>A comment is two dashes after a blank or at the start of a line, so that <c>15+--</c> is a note and its marks.</summary>
    public static bool IsComment(string text, int at) =>
        at + 1 < text.Length && text[at] == '-' && text[at + 1] == '-' && (at == 0 || char.IsWhiteSpace(text[at - 1]));

    /// <summary>Where the run of characters from <paramref name="at"/> on that satisfy <paramref name="belongs"/> ends.</summary>
    public int EndOfRun(int at, Func<char, bool> belongs)
    {
        while (at < Limit && belongs(Text[at])) at++;
        return at;
    }

    /// <summary>The end of the line <paramref name="at"/> stands in, or the limit before it.</summary>
    public int EndOfLine(int at)
    {
        // Asked again and again within one line; looking it up once keeps a line of any length linear.
        if (at < lineFrom || at > lineEnd) (lineFrom, lineEnd) = (at, Lines.EndOfLine(Text, at));
        return Math.Min(lineEnd, Limit);
    }

    private string Slice(int start, int end) => (end - start) switch
    {
        0 => "",
        1 when Text[start] < 128 => SingleCharacters[Text[start]],
        <= LongestKept => Kept(Text.AsSpan(start, end - start)),
        _ => Text[start..end],
    };

    // Music says the same few things again and again; each is one string however often it stands in the sheet.
    private string Kept(ReadOnlySpan<char> piece)
    {
        var hash = (uint)piece.Length;
        foreach (var c in piece) hash = unchecked(hash * 31 + c);
        ref var place = ref kept[hash % (uint)kept.Length];
        if (place is null || !piece.SequenceEqual(place)) place = piece.ToString();
        return place;
    }
}
