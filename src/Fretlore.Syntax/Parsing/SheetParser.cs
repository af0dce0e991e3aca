using System.Collections.Immutable;

namespace Fretlore.Syntax.Parsing;

/// <summary>Reads a sheet block by block. A line at the margin always begins a new block, whatever stood open before it.</summary>
internal sealed partial class SheetParser
{
    private readonly Cursor cursor;
    private readonly Findings findings;
    private readonly MusicParser music;
    private readonly DeclaredNames names;

    public SheetParser(string text, Findings findings)
    {
        this.findings = findings;
        cursor = new Cursor(text, findings);
        music = new MusicParser(cursor);
        names = DeclaredNames.In(text);
    }

    public SheetSyntax Parse()
    {
        if (cursor.AtEnd) findings.Add(SyntaxDiagnostics.EmptySheet());
        var blocks = ImmutableArray.CreateBuilder<BlockSyntax>();
        while (!cursor.AtEnd)
        {
            var whole = cursor.LimitTo(Lines.NextBlock(cursor.Text, cursor.Next));
            blocks.Add(Block());
            if (!cursor.AtEnd) blocks.Add(LeftOver());
            cursor.LimitTo(whole);
        }
        return new SheetSyntax(blocks.DrainToImmutable(), cursor.Take(TokenKind.EndOfFile, cursor.Next));
    }

    private BlockSyntax Block()
    {
        var start = cursor.Next;
        var isAtMargin = start == 0 || cursor.Text[start - 1] is '\n' or '\r';
        if (!isAtMargin) return Stray(SyntaxDiagnostics.IndentedWithoutBlock);
        var word = cursor.Text[start..cursor.EndOfRun(start, Names.IsNameCharacter)];
        switch (word)
        {
            case "part": return Part();
            case "shape": return Shape();
            case "riff": return Riff();
            case "section": return Section();
            case "roadmap": return RoadMap();
            case "recording": return Recording();
            case "lesson": return new LessonSyntax(TakeWord(), SettingLines(Vocabulary.LessonSettings, "a lesson"));
        }
        if (Vocabulary.SongSettings.Contains(word)) return new SettingSyntax(TakeWord(), Values.Rest(cursor));
        if (findings.IsFull) return Stray(SyntaxDiagnostics.NoBlockWord);
        return word.Length > 0 && char.IsLetter(word[0])
            ? Stray(span => SyntaxDiagnostics.UnknownBlock(
                new TextSpan(span.Start, word.Length), word, Nearest.To(word, [.. Vocabulary.Blocks, .. Vocabulary.SongSettings])))
            : Stray(SyntaxDiagnostics.NoBlockWord);
    }

    private StrayBlockSyntax LeftOver() => Stray(SyntaxDiagnostics.AfterBlock);

    /// <summary>Everything up to the limit, a token for each line, reported once at its first line.</summary>
    private StrayBlockSyntax Stray(Func<TextSpan, Diagnostic> report)
    {
        var tokens = ImmutableArray.CreateBuilder<SyntaxToken>();
        while (!cursor.AtEnd)
        {
            var length = cursor.Text.AsSpan(cursor.Next, LineEnd() - cursor.Next).TrimEnd().Length;
            tokens.Add(cursor.Take(TokenKind.Stray, cursor.Next + length));
        }
        findings.Add(report(tokens[0].Span));
        return new StrayBlockSyntax(tokens.DrainToImmutable());
    }

    private PartSyntax Part()
    {
        var keyword = TakeWord();
        var name = Name(keyword, Vocabulary.IsReservedForParts);
        var title = cursor.Is('"') ? Values.Text(cursor) : null;
        return new PartSyntax(keyword, name, title, SettingLines(Vocabulary.PartSettings, "a part", Vocabulary.PartSettings));
    }

    private ShapeSyntax Shape()
    {
        var keyword = TakeWord();
        var hasName = !cursor.AtEnd && Names.IsNameCharacter(cursor.Current);
        var name = hasName ? TakeWord() : cursor.Missing(TokenKind.Word);
        if (!hasName) findings.Add(SyntaxDiagnostics.NameMissing(keyword.Span, keyword.Text));
        var frets = cursor.Is('[') ? music.Bracket() : null;
        if (frets is null) findings.Add(SyntaxDiagnostics.ShapeNeedsBracket(TextSpan.FromBounds(keyword.Span.Start, name.Span.End)));
        return new ShapeSyntax(keyword, name, frets);
    }

    private RecordingSyntax Recording()
    {
        var keyword = TakeWord();
        var name = cursor.Is('"') ? Values.Text(cursor) : cursor.Missing(TokenKind.Text);
        if (name.IsMissing) findings.Add(SyntaxDiagnostics.RecordingNeedsName(keyword.Span));
        return new RecordingSyntax(keyword, name, SettingLines(Vocabulary.RecordingSettings, "a recording"));
    }

    private RoadMapSyntax RoadMap()
    {
        var keyword = TakeWord();
        var name = Name(keyword, Vocabulary.IsReservedForRiffs);
        return new RoadMapSyntax(keyword, name, SettingLines(Vocabulary.RoadMapRules, "a road map"));
    }

    /// <summary>Settings up to the limit, one a line; on a line, words in <paramref name="alsoBegin"/> begin another.</summary>
    private ImmutableArray<SettingSyntax> SettingLines(ImmutableArray<string> known, string where, ImmutableArray<string> alsoBegin = default)
    {
        var settings = ImmutableArray.CreateBuilder<SettingSyntax>();
        while (!cursor.AtEnd)
        {
            var setting = Setting(alsoBegin);
            settings.Add(setting);
            if (known.Contains(setting.Word.Text) || findings.IsFull) continue;
            findings.Add(SyntaxDiagnostics.UnknownSetting(setting.Word.Span, setting.Word.Text, where, known, Nearest.To(setting.Word.Text, known)));
        }
        return settings.DrainToImmutable();
    }

    /// <summary>A word and its values, up to the line's end.</summary>
    private SettingSyntax Setting(ImmutableArray<string> alsoBegin = default)
    {
        var limit = cursor.LimitTo(LineEnd());
        var word = Values.Next(cursor);
        var values = ImmutableArray.CreateBuilder<SyntaxToken>();
        while (!cursor.AtEnd && (alsoBegin.IsDefault || !StartsAny(alsoBegin))) values.Add(Values.Next(cursor));
        cursor.LimitTo(limit);
        return new SettingSyntax(word, values.DrainToImmutable());
    }

    private bool StartsAny(ImmutableArray<string> words)
    {
        foreach (var word in words)
        {
            if (Values.AtWord(cursor, word)) return true;
        }
        return false;
    }

    /// <summary>The name a block declares, checked: it must read as a name wherever music plays it.</summary>
    private SyntaxToken Name(SyntaxToken keyword, Func<string, bool> isReserved)
    {
        var limit = cursor.LimitTo(LineEnd());
        var end = cursor.EndOfRun(cursor.Next, c => !char.IsWhiteSpace(c) && c is not ('=' or '"' or '[' or '@' or '{' or '|'));
        var name = end == cursor.Next ? cursor.Missing(TokenKind.Word) : cursor.Take(TokenKind.Word, end);
        cursor.LimitTo(limit);
        if (name.IsMissing) findings.Add(SyntaxDiagnostics.NameMissing(keyword.Span, keyword.Text));
        else if (isReserved(name.Text) || Names.IsStrokes(name.Text)) findings.Add(SyntaxDiagnostics.NameIsKeyword(name.Span, name.Text));
        else if (Names.BeginsEvent(name.Text)) findings.Add(SyntaxDiagnostics.NameReadsAsEvent(name.Span, name.Text));
        else if (!Names.IsName(name.Text)) findings.Add(SyntaxDiagnostics.NameMalformed(name.Span, name.Text));
        return name;
    }

    private SyntaxToken TakeWord() => cursor.Take(TokenKind.Word, cursor.EndOfRun(cursor.Next, Names.IsNameCharacter));

    /// <summary>The end of the line the next token stands in.</summary>
    private int LineEnd() => cursor.EndOfLine(cursor.Next);
}
