using System.Collections.Immutable;

namespace Fretlore.Syntax.Parsing;

/// <content>Groups between braces: spans, strands, pickups, repeats and pick groups.</content>
internal sealed partial class MusicParser
{
    private readonly record struct Body<T>(SyntaxToken Open, ImmutableArray<T> Items, SyntaxToken Close);

    /// <summary>A group whose word is known to come next and to have a brace after it, or a brace without a word.</summary>
    private ItemSyntax Group()
    {
        if (cursor.Is('{'))
        {
            Findings.Add(SyntaxDiagnostics.GroupWithoutWord(new TextSpan(cursor.Next, 1)));
            return Span(cursor.Missing(TokenKind.Word), null);
        }
        var word = TakeWord();
        if (Vocabulary.Spans.Contains(word.Text) || Names.IsStrokes(word.Text)) return Span(word, null);
        if (Vocabulary.Strands.Contains(word.Text))
        {
            var body = BracedItems(word.Span);
            return new StrandSyntax(word, body.Open, body.Items, body.Close);
        }
        if (word.Text == "upbeat")
        {
            var body = BracedItems(word.Span);
            return new UpbeatSyntax(word, body.Open, body.Items, body.Close);
        }
        if (!Findings.IsFull)
        {
            var near = Nearest.To(word.Text, Vocabulary.Groups);
            Findings.Add(SyntaxDiagnostics.UnknownGroup(word.Span, word.Text, near));
        }
        return Span(word, null);
    }

    private SpanSyntax Span(SyntaxToken word, SyntaxToken? letters)
    {
        var body = BracedItems((letters ?? word).Span);
        return new SpanSyntax(word, letters, body.Open, body.Items, body.Close);
    }

    private SpanSyntax ByGroup()
    {
        var word = TakeWord();
        var letters = char.IsLetter(cursor.Current) ? TakeWord() : cursor.Missing(TokenKind.Word);
        if (letters.IsMissing || !cursor.Is('{')) Findings.Add(SyntaxDiagnostics.ByNeedsFingers(word.Span));
        return Span(word, letters);
    }

    private RepeatSyntax Repeat()
    {
        var word = TakeWord();
        var count = Values.Number(cursor);
        if (count.IsMissing) Findings.Add(SyntaxDiagnostics.TimesNeedsCount(word.Span));
        var open = OpenBrace(word.Span);
        if (open.IsMissing) return new RepeatSyntax(word, count, open, [], [], [], cursor.Missing(TokenKind.Sign));
        if (IsTooDeep())
        {
            return new RepeatSyntax(word, count, open, SkippedBody(), [], [], CloseBrace(word.Span));
        }
        depth++;
        var items = Items(Until.EndingOrBrace);
        var endings = ImmutableArray.CreateBuilder<EndingSyntax>();
        while (AtEnding()) endings.Add(Ending());
        var late = Items(Until.Brace);
        depth--;
        if (!late.IsEmpty) Findings.Add(SyntaxDiagnostics.MusicAfterEndings(late[0].Span));
        return new RepeatSyntax(word, count, open, items, endings.DrainToImmutable(), late, CloseBrace(word.Span));
    }

    private bool AtEnding()
    {
        if (!Values.AtWord(cursor, "on")) return false;
        var next = At(cursor.SkipTrivia(cursor.Next + 2));
        return Names.IsDigit(next) || next == '{';
    }

    private EndingSyntax Ending()
    {
        var word = TakeWord();
        var passes = ImmutableArray.CreateBuilder<SyntaxToken>();
        while (Names.IsDigit(cursor.Current) || cursor.Current is ',' or '-')
        {
            passes.Add(Names.IsDigit(cursor.Current) ? Values.Number(cursor) : cursor.TakeSign());
        }
        if (passes.Count == 0) Findings.Add(SyntaxDiagnostics.EndingNeedsPasses(word.Span));
        var body = BracedItems(word.Span);
        return new EndingSyntax(word, passes.DrainToImmutable(), body.Open, body.Items, body.Close);
    }

    private ItemSyntax Pick()
    {
        var word = TakeWord();
        if (!Names.BeginsEvent(Rest) || cursor.Current is not ('#' or '[' or 'r'))
        {
            Findings.Add(SyntaxDiagnostics.PickNeedsShape(word.Span));
            return cursor.Is('{') ? Span(word, null) : new StrayItemSyntax(word);
        }
        var shape = Sound();
        var open = OpenBrace(word.Span);
        if (open.IsMissing) return new PickSyntax(word, shape, open, [], cursor.Missing(TokenKind.Sign));
        var items = ImmutableArray.CreateBuilder<SyntaxNode>();
        while (!cursor.AtEnd && !cursor.Is('}')) items.Add(PickItem());
        return new PickSyntax(word, shape, open, items.DrainToImmutable(), CloseBrace(word.Span));
    }

    private SyntaxNode PickItem()
    {
        if (IsAtTime()) return Spaced(Time());
        if (cursor.Is('R') && Names.BeginsEvent(Rest)) return new RestSyntax(cursor.TakeSign());
        if (cursor.Is('=')) return Hold();
        if (!Names.IsDigit(cursor.Current)) return StrayInPick();
        var strings = cursor.Take(TokenKind.Number, cursor.EndOfRun(cursor.Next, Names.IsDigit));
        if (!cursor.TouchesAt(':')) return new PickStringsSyntax(strings, null, null);
        var colon = cursor.TakeSign();
        return new PickStringsSyntax(strings, colon, TouchingNumber(SyntaxDiagnostics.PickFretMissing(colon.Span)));
    }

    private Body<ItemSyntax> BracedItems(TextSpan opener)
    {
        var open = OpenBrace(opener);
        if (open.IsMissing) return new Body<ItemSyntax>(open, [], cursor.Missing(TokenKind.Sign));
        if (IsTooDeep()) return new Body<ItemSyntax>(open, SkippedBody(), CloseBrace(opener));
        depth++;
        var items = Items(Until.Brace);
        depth--;
        return new Body<ItemSyntax>(open, items, CloseBrace(opener));
    }

    private SyntaxToken OpenBrace(TextSpan opener)
    {
        if (cursor.Is('{')) return cursor.TakeSign();
        Findings.Add(SyntaxDiagnostics.BraceMissing(opener));
        return cursor.Missing(TokenKind.Sign);
    }

    private SyntaxToken CloseBrace(TextSpan opener)
    {
        if (cursor.Is('}')) return cursor.TakeSign();
        Findings.Add(SyntaxDiagnostics.UnclosedGroup(opener));
        return cursor.Missing(TokenKind.Sign);
    }

    private bool IsTooDeep()
    {
        if (depth < DeepestNesting) return false;
        if (!tooDeepIsReported) Findings.Add(SyntaxDiagnostics.TooDeep(new TextSpan(cursor.Position - 1, 1), DeepestNesting));
        tooDeepIsReported = true;
        return true;
    }

    /// <summary>Everything up to the brace that closes this group, as one stray token.</summary>
    private ImmutableArray<ItemSyntax> SkippedBody()
    {
        var end = cursor.Next;
        for (var (at, open) = (cursor.Next, 1); at < cursor.Limit; at++)
        {
            var c = cursor.Text[at];
            if (c == '{') open++;
            else if (c == '}' && --open == 0) break;
            if (Cursor.IsComment(cursor.Text, at)) at = cursor.EndOfLine(at) - 1;
            else if (!char.IsWhiteSpace(c)) end = at + 1;
        }
        return end == cursor.Next ? [] : [new StrayItemSyntax(cursor.Take(TokenKind.Stray, end))];
    }
}
