using System.Collections.Frozen;

namespace Fretlore.Syntax.Parsing;

/// <content>Words at the place of an item: keywords, riffs played here, and what belongs to nothing.</content>
internal sealed partial class MusicParser
{
    private static readonly FrozenDictionary<char, string> LookAlikes = new Dictionary<char, string>
    {
        ['“'] = "\"", ['”'] = "\"", ['„'] = "\"", ['‘'] = "'", ['’'] = "'", ['′'] = "'", ['–'] = "-", ['—'] = "--", ['−'] = "-",
        ['×'] = "x", ['♯'] = "#", ['＝'] = "=", ['｜'] = "|", ['·'] = ".", ['…'] = ".",
    }.ToFrozenDictionary();

    private SyntaxToken TakeWord() => cursor.Take(TokenKind.Word, cursor.EndOfRun(cursor.Next, Names.IsNameCharacter));

    private ItemSyntax WordItem()
    {
        var end = cursor.EndOfRun(cursor.Next, Names.IsNameCharacter);
        var word = cursor.Text[cursor.Next..end];
        var after = At(cursor.SkipTrivia(end));
        switch (word)
        {
            case "times": return Repeat();
            case "by": return ByGroup();
            case "pick": return Pick();
            case "rest": return new RestBarsSyntax(TakeWord(), NumberOrNull(), Comma());
            case "again": return new AgainSyntax(TakeWord(), NumberOrNull(), Comma());
            case "roadmap": return RoadMapUse();
            case "on" when after == '{' || Names.IsDigit(after): return EndingOutsideRepeat();
        }
        if (after == '{') return Group();
        if (AtEdge() && At(end) is ';' or ',') return Phrase();
        if (Vocabulary.Spans.Contains(word) && IsSwitchWord(cursor.SkipTrivia(end)))
        {
            return new SwitchSyntax(TakeWord(), TakeWord());
        }
        if (Vocabulary.IsReservedForRiffs(word) || (word.Length > 1 && Names.IsStrokes(word)))
        {
            Findings.Add(SyntaxDiagnostics.KeywordAlone(new TextSpan(cursor.Next, word.Length), word));
            return new StrayItemSyntax(TakeWord());
        }
        return Names.IsName(word) ? Play() : Stray();
    }

    private bool IsSwitchWord(int at)
    {
        var end = cursor.EndOfRun(at, Names.IsNameCharacter);
        return cursor.Text.AsSpan(at, end - at) is "on" or "off";
    }

    private PlaySyntax Play()
    {
        var name = TakeWord();
        SyntaxToken? asWord = null, mode = null, times = null, count = null;
        if (Values.AtWord(cursor, "as"))
        {
            asWord = TakeWord();
            var known = Values.AtWord(cursor, "fretted") || Values.AtWord(cursor, "sounded");
            mode = known ? TakeWord() : cursor.Missing(TokenKind.Word);
            if (!known) Findings.Add(SyntaxDiagnostics.AsNeedsMode(asWord.Span));
        }
        if (IsTimesOfPlay())
        {
            times = TakeWord();
            count = Values.Number(cursor);
            if (count.IsMissing) Findings.Add(SyntaxDiagnostics.TimesNeedsCount(times.Span));
        }
        return new PlaySyntax(name, asWord, mode, times, count, Comma());
    }

    /// <summary><c>times 3</c> belongs to the riff before it unless a brace follows: then it is a repeat of its own.</summary>
    private bool IsTimesOfPlay()
    {
        if (!Values.AtWord(cursor, "times")) return false;
        var number = cursor.SkipTrivia(cursor.Next + 5);
        return At(cursor.SkipTrivia(cursor.EndOfRun(number, Names.IsDigit))) != '{';
    }

    private RoadMapUseSyntax RoadMapUse()
    {
        var word = TakeWord();
        var name = char.IsLower(cursor.Current) && !Values.AtWord(cursor, "bars") ? TakeWord() : cursor.Missing(TokenKind.Word);
        var count = name.IsMissing ? cursor.Missing(TokenKind.Number) : Values.Number(cursor);
        var bars = Values.AtWord(cursor, "bars") || Values.AtWord(cursor, "bar") ? TakeWord() : cursor.Missing(TokenKind.Word);
        if (name.IsMissing || count.IsMissing || bars.IsMissing) Findings.Add(SyntaxDiagnostics.RoadMapUseIncomplete(word.Span));
        return new RoadMapUseSyntax(word, name, count, bars, Comma());
    }

    private SpanSyntax EndingOutsideRepeat()
    {
        var word = TakeWord();
        Findings.Add(SyntaxDiagnostics.EndingOutsideRepeat(word.Span));
        return Span(word, NumberOrNull());
    }

    private SyntaxToken? NumberOrNull() => Names.IsDigit(cursor.Current) ? Values.Number(cursor) : null;

    private SyntaxToken? Comma() => cursor.TouchesAt(',') ? cursor.TakeSign() : null;

    private StrayItemSyntax Stray() => Stray(text => text switch
    {
        ['}', ..] => SyntaxDiagnostics.BraceNotOpened,
        [']', ..] => SyntaxDiagnostics.BracketNotOpened,
        [')', ..] => SyntaxDiagnostics.ParenthesisNotOpened,
        "d" or "u" or "g" or "t" => span => SyntaxDiagnostics.SignNeedsNote(span, text),
        _ => span => SyntaxDiagnostics.StrayText(span, text),
    });

    private StrayItemSyntax UnknownMark() => Stray(text => span => SyntaxDiagnostics.UnknownMark(span, text));

    private StrayItemSyntax StrayInPick() => Stray(text => span => SyntaxDiagnostics.StrayInPick(span, text));

    /// <summary>Characters up to the next blank or sign of structure, kept as one token.</summary>
    private StrayItemSyntax Stray(Func<string, Func<TextSpan, Diagnostic>> report)
    {
        var end = cursor.EndOfRun(cursor.Next + 1, c => !char.IsWhiteSpace(c) && !IsDelimiter(c));
        var token = cursor.Take(TokenKind.Stray, end);
        if (Findings.IsFull) Findings.Add(SyntaxDiagnostics.StrayText(token.Span, ""));
        else if (LookAlikes.TryGetValue(token.Text[0], out var meant))
        {
            Findings.Add(SyntaxDiagnostics.LookAlike(new TextSpan(token.Span.Start, 1), token.Text[0], meant));
        }
        else Findings.Add(report(token.Text)(token.Span));
        return new StrayItemSyntax(token);
    }
}
