using System.Collections.Immutable;

namespace Fretlore.Syntax.Parsing;

/// <content>Riffs and their variations.</content>
internal sealed partial class SheetParser
{
    private RiffSyntax Riff()
    {
        var keyword = TakeWord();
        var name = Name(keyword, Vocabulary.IsReservedForRiffs);
        if (cursor.Is('=') && cursor.Next < cursor.EndOfLine(name.Span.End))
        {
            return new RiffSyntax(keyword, name, [], Variation(), new MusicSyntax([]));
        }
        var settings = ImmutableArray.CreateBuilder<SettingSyntax>();
        while (!cursor.AtEnd && StartsAny(Vocabulary.RiffSettings)) settings.Add(Setting());
        if (cursor.AtEnd) findings.Add(SyntaxDiagnostics.RiffIsEmpty(name.IsMissing ? keyword.Span : name.Span));
        return new RiffSyntax(keyword, name, settings.DrainToImmutable(), null, music.Music());
    }

    private VariationSyntax Variation()
    {
        var equals = cursor.TakeSign();
        var hasBase = char.IsLetter(cursor.Current) && !AtEdit();
        var baseName = hasBase ? TakeWord() : cursor.Missing(TokenKind.Word);
        if (!hasBase) findings.Add(SyntaxDiagnostics.VariationNeedsBase(equals.Span));
        var edits = ImmutableArray.CreateBuilder<EditSyntax>();
        while (AtEdit()) edits.Add(Edit());
        return new VariationSyntax(equals, baseName, edits.DrainToImmutable());
    }

    private bool AtEdit() => Values.AtWord(cursor, "with") || Values.AtWord(cursor, "without");

    private EditSyntax Edit()
    {
        var word = TakeWord();
        var last = Values.AtWord(cursor, "last") ? TakeWord() : null;
        var hasBar = Values.AtWord(cursor, "bar") || Values.AtWord(cursor, "bars");
        var bar = hasBar ? TakeWord() : cursor.Missing(TokenKind.Word);
        SyntaxToken? from = null, dash = null, to = null, colon = null;
        if (hasBar && last is null)
        {
            from = Values.Number(cursor);
            if (cursor.Is('-')) (dash, to) = (cursor.TakeSign(), Values.Number(cursor));
        }
        if (!hasBar || from is { IsMissing: true } || to is { IsMissing: true })
        {
            findings.Add(SyntaxDiagnostics.EditNeedsBars(word.Span, word.Text));
        }
        if (word.Text == "without") return new EditSyntax(word, last, bar, from, dash, to, null, null);
        colon = cursor.Is(':') ? cursor.TakeSign() : cursor.Missing(TokenKind.Sign);
        if (colon.IsMissing && hasBar) findings.Add(SyntaxDiagnostics.EditNeedsColon(TextSpan.FromBounds(word.Span.Start, colon.Span.Start)));
        return new EditSyntax(word, last, bar, from, dash, to, colon, music.MusicOfEdit());
    }
}
