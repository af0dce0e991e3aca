using System.Collections.Immutable;

namespace Fretlore.Syntax.Parsing;

/// <content>Sections: a name, and lines that begin with a part's name, a setting's word, or go on with the music before.</content>
internal sealed partial class SheetParser
{
    private enum LineKind
    {
        GoesOn,
        Setting,
        Part,
        UnknownPart,
        OnlyPart,
    }

    private SectionSyntax Section()
    {
        var keyword = TakeWord();
        var block = cursor.LimitTo(LineEnd());
        var name = Words("like");
        if (name.IsEmpty)
        {
            name = [cursor.Missing(TokenKind.Word)];
            findings.Add(SyntaxDiagnostics.NameMissing(keyword.Span, keyword.Text));
        }
        var like = cursor.AtEnd ? null : TakeWord();
        var likeName = like is null ? [] : Values.Rest(cursor);
        if (like is not null && likeName.IsEmpty) findings.Add(SyntaxDiagnostics.LikeNeedsName(like.Span));
        cursor.LimitTo(block);
        return new SectionSyntax(keyword, name, like, likeName, Body());
    }

    /// <summary>Words of a name up to <paramref name="end"/> or the limit.</summary>
    private ImmutableArray<SyntaxToken> Words(string end)
    {
        var words = ImmutableArray.CreateBuilder<SyntaxToken>();
        while (!cursor.AtEnd && !Values.AtWord(cursor, end)) words.Add(Values.Next(cursor));
        return words.DrainToImmutable();
    }

    private ImmutableArray<SyntaxNode> Body()
    {
        var body = ImmutableArray.CreateBuilder<SyntaxNode>();
        var kind = KindOfLine(cursor.Next, hasLine: false);
        while (!cursor.AtEnd)
        {
            var (end, nextKind) = EndOfPiece(kind);
            var block = cursor.LimitTo(end);
            body.Add(kind == LineKind.Setting ? Setting() : PartLine(kind));
            cursor.LimitTo(block);
            kind = nextKind;
        }
        return body.DrainToImmutable();
    }

    /// <summary>Where the line of a setting, or the lines of a part's music, end; and what comes then.</summary>
    private (int End, LineKind Next) EndOfPiece(LineKind kind)
    {
        for (var line = Lines.NextLine(cursor.Text, cursor.Next); line < cursor.Limit; line = Lines.NextLine(cursor.Text, line))
        {
            var start = line;
            while (start < cursor.Limit && char.IsWhiteSpace(cursor.Text[start]) && cursor.Text[start] is not ('\r' or '\n')) start++;
            if (start == cursor.Limit || cursor.Text[start] is '\r' or '\n' || Cursor.IsComment(cursor.Text, start)) continue;
            var next = KindOfLine(start, hasLine: kind != LineKind.Setting);
            if (next != LineKind.GoesOn) return (line, next);
        }
        return (cursor.Limit, LineKind.GoesOn);
    }

    /// <param name="start">The first character of the line.</param>
    /// <param name="hasLine">True when music stands before it that it may go on with.</param>
    private LineKind KindOfLine(int start, bool hasLine)
    {
        var end = cursor.EndOfRun(start, Names.IsNameCharacter);
        var word = cursor.Text[start..end];
        var after = cursor.SkipTrivia(end);
        var isGroup = after < cursor.Limit && cursor.Text[after] == '{';
        if (names.Parts.Contains(word) && !isGroup) return LineKind.Part;
        if (Vocabulary.SectionSettings.Contains(word)) return LineKind.Setting;
        if (!isGroup && names.Parts.Count > 0 && !findings.IsFull && names.IsUnknown(word))
        {
            // Music that stands before may go on with any riff, a misspelt one too: only a part's near miss begins a line of its own.
            if ((names.Parts.Count > 1 && !hasLine) || names.IsNearPart(word)) return LineKind.UnknownPart;
        }
        return hasLine ? LineKind.GoesOn : LineKind.OnlyPart;
    }

    private PartLineSyntax PartLine(LineKind kind)
    {
        if (kind is LineKind.Part or LineKind.UnknownPart)
        {
            var name = TakeWord();
            if (kind == LineKind.UnknownPart)
            {
                findings.Add(SyntaxDiagnostics.UnknownPart(name.Span, name.Text, names.Parts, Nearest.To(name.Text, names.Parts)));
            }
            return new PartLineSyntax(name, music.Music());
        }
        var missing = cursor.Missing(TokenKind.Word);
        if (names.Parts.Count > 1) findings.Add(SyntaxDiagnostics.LineNeedsPart(new TextSpan(cursor.Next, 1), names.Parts));
        return new PartLineSyntax(missing, music.Music());
    }
}
