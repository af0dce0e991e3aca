using System.Collections.Immutable;

namespace Fretlore.Syntax.Parsing;

/// <summary>Reads music: a flat run of items up to the cursor's limit.</summary>
internal sealed partial class MusicParser(Cursor cursor)
{
    private const int DeepestNesting = 64;

    private int depth;
    private bool tooDeepIsReported;

    private Findings Findings => cursor.Findings;

    private ReadOnlySpan<char> Rest => cursor.Text.AsSpan(cursor.Next, cursor.Limit - cursor.Next);

    public MusicSyntax Music() => new(Items(Until.End));

    /// <summary>Music up to the next edit of a variation.</summary>
    public MusicSyntax MusicOfEdit() => new(Items(Until.Edit));

    private enum Until
    {
        End,
        Edit,
        Brace,
        EndingOrBrace,
    }

    private ImmutableArray<ItemSyntax> Items(Until until)
    {
        var items = ImmutableArray.CreateBuilder<ItemSyntax>();
        while (!cursor.AtEnd)
        {
            if (until is Until.Brace or Until.EndingOrBrace && cursor.Is('}')) break;
            if (until == Until.EndingOrBrace && AtEnding()) break;
            if (until == Until.Edit && (Values.AtWord(cursor, "with") || Values.AtWord(cursor, "without"))) break;
            var item = Item();
            items.Add(item);
            if (item is PhraseSyntax && IsAtUnknownMark()) items.Add(UnknownMark());
        }
        return items.DrainToImmutable();
    }

    private ItemSyntax Item()
    {
        switch (cursor.Current)
        {
            case '|': return new BarLineSyntax(cursor.TakeSign(cursor.Peek(1) == '|' ? 2 : 1));
            case '@': return Spaced(Where());
            case '"': return new WordsSyntax(Values.Text(cursor));
            case '(': return Change();
            case '{': return Group();
            case ',' or ';': return Phrase();
        }
        if (Names.BeginsEvent(Rest)) return Phrase();
        if (Names.IsTimeLetter(cursor.Current) && IsTime()) return Spaced(Time());
        return char.IsLower(cursor.Current) ? WordItem() : Stray();
    }

    /// <summary>Time letters are time unless another letter follows: <c>Em</c> is something else.</summary>
    private bool IsTime()
    {
        var next = At(cursor.EndOfRun(cursor.Next, c => Names.IsTimeLetter(c) || c == '.'));
        return !char.IsLetter(next) || next == 'R';
    }

    private TimeSyntax Time()
    {
        var values = TimeValues();
        if (!cursor.TouchesAt(':')) return new TimeSyntax(values, null, null, null, null);
        var colon = cursor.TakeSign();
        var count = TouchingNumber(SyntaxDiagnostics.TupletNeedsCount(colon.Span));
        if (!cursor.TouchesAt('/')) return new TimeSyntax(values, colon, count, null, null);
        var slash = cursor.TakeSign();
        return new TimeSyntax(values, colon, count, slash, TouchingNumber(SyntaxDiagnostics.TupletNeedsCount(slash.Span)));
    }

    private SyntaxToken TimeValues()
    {
        var token = cursor.Take(TokenKind.Time, cursor.EndOfRun(cursor.Next, c => Names.IsTimeLetter(c) || c == '.'));
        if (token.Text.Contains("...", StringComparison.Ordinal)) Findings.Add(SyntaxDiagnostics.TooManyDots(token.Span));
        return token;
    }

    private SyntaxToken TouchingNumber(Diagnostic whenMissing)
    {
        if (cursor.Touches && Names.IsDigit(cursor.Current)) return Values.Number(cursor);
        Findings.Add(whenMissing);
        return cursor.Missing(TokenKind.Number);
    }

    // A digit for each string: no number, so that its size means nothing.
    private SyntaxToken StringDigits(Diagnostic whenMissing) => cursor.Touches && Names.IsDigit(cursor.Current)
        ? cursor.Take(TokenKind.Number, cursor.EndOfRun(cursor.Next, Names.IsDigit))
        : TouchingNumber(whenMissing);

    private WhereSyntax Where()
    {
        var at = cursor.TakeSign();
        var strings = StringDigits(SyntaxDiagnostics.PlaceNeedsStrings(at.Span));
        if (strings.IsMissing || !cursor.TouchesAt('-') || !Names.IsDigit(cursor.Peek(1))) return new WhereSyntax(at, strings);
        var dash = cursor.TakeSign();
        return new WhereSyntax(at, strings, dash, Values.Number(cursor));
    }

    /// <summary>A change ends at its parenthesis, at the latest with its line or at a bar line or brace.</summary>
    private ChangeSyntax Change()
    {
        var open = cursor.TakeSign();
        var limit = cursor.LimitTo(cursor.EndOfLine(open.Span.End));
        var tokens = ImmutableArray.CreateBuilder<SyntaxToken>();
        for (var inner = 0; !cursor.AtEnd && cursor.Current is not ('|' or '{' or '}'); tokens.Add(Values.Next(cursor, "|{}")))
        {
            if (cursor.Is('(')) inner++;
            else if (cursor.Is(')') && inner-- == 0) break;
        }
        var isClosed = cursor.Is(')');
        var close = isClosed ? cursor.TakeSign() : cursor.Missing(TokenKind.Sign);
        if (!isClosed) Findings.Add(SyntaxDiagnostics.UnclosedParenthesis(open.Span));
        else if (tokens.Count == 0) Findings.Add(SyntaxDiagnostics.EmptyChange(TextSpan.FromBounds(open.Span.Start, close.Span.End)));
        cursor.LimitTo(limit);
        return new ChangeSyntax(open, tokens.DrainToImmutable(), close);
    }

    private char At(int index) => index < cursor.Limit ? cursor.Text[index] : '\0';

    /// <summary>Reports an item that the next one follows without a blank.</summary>
    private T Spaced<T>(T item) where T : ItemSyntax
    {
        if (!Findings.IsFull && cursor.Touches && (char.IsLetterOrDigit(cursor.Current) || cursor.Current is '[' or '#' or '=' or '+' or '@' or ',' or ';'))
        {
            Findings.Add(SyntaxDiagnostics.MissingBlank(item.Span, item.ToFullString().Trim()));
        }
        return item;
    }
}
