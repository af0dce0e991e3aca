using System.Collections.Immutable;
using Fretlore.Syntax;
using Fretlore.Tests.Songs;
using Fretlore.Workspace;

namespace Fretlore.Tests.Workspace;

/// <summary>A chord symbol stated in the sheet is held against the notes.</summary>
public class StatedSymbolFacts
{
    [Theory]
    [InlineData("Am")] // as it is
    [InlineData("A5")] // says less than sounds: the third is more
    [InlineData("N.C.")]
    public void ASymbolThatTheNotesBearOut_IsNotSpokenOf(string symbol) => Assert.Empty(Codes(symbol, "[. 0 2 2 1 0]"));

    [Theory]
    [InlineData("Am7", "[. 0 2 0 1 0]")]
    [InlineData("Am", "[. 0 2 0 1 0]")] // a plainer name for the same chord
    [InlineData("D/F#", "[2 . 0 2 3 2]")]
    public void APlainerOrFullerName_IsNoDisagreement(string symbol, string frets) => Assert.Empty(Codes(symbol, frets));

    [Theory]
    [InlineData("A", "[. 0 2 2 1 0]", "no C# sounds; the notes make Am.")]
    [InlineData("Am7", "[. 0 2 2 1 0]", "no G sounds; the notes make Am.")]
    [InlineData("C/G", "[. 3 2 0 1 0]", "no G sounds; the notes make C.")]
    [InlineData("E", "[. 3 2 0 1 0]", "no G# sounds; the notes make C.")]
    public void ASymbolWhoseToneSoundsNowhere_IsAWarning(string symbol, string frets, string expected)
    {
        var finding = Assert.Single(Findings(symbol, frets));
        Assert.Equal(("FL3001", Severity.Warning), (finding.Code, finding.Severity));
        Assert.EndsWith(expected, finding.Message, StringComparison.Ordinal);
        Assert.Equal($"(chord {symbol})", finding.SourceLine.Substring(finding.Column - 1, finding.Length));
    }

    [Fact]
    public void ASymbolThatMostOfTheNotesAreForeignTo_IsAWarning_WhereItStands()
    {
        // C and G sound, and so do F#, A and D.
        var finding = Assert.Single(Findings("C5", "[3 3 4 2 3 .]"));
        Assert.Equal(("FL3002", Severity.Warning), (finding.Code, finding.Severity));
        Assert.Equal("(chord C5)", finding.SourceLine.Substring(finding.Column - 1, finding.Length));
    }

    [Theory]
    [InlineData("A", "FL3001")]
    [InlineData("C5", "FL3002")]
    public void ASymbolWithinARiff_IsTheOneThatIsPointedAt(string symbol, string code)
    {
        var finding = Assert.Single(Open(
            Sheets.Top + $"riff one\n  @6-1 (chord C) W [. 3 2 0 1 0] | (chord {symbol}) [3 3 4 2 3 .] |\n\nsection All\n  guitar one times 2\n"));
        Assert.Equal((code, $"(chord {symbol})"), (finding.Code, finding.SourceLine.Substring(finding.Column - 1, finding.Length)));
    }

    [Fact]
    public void ASymbolOfNoKnownKind_IsAHint_WhereItStands()
    {
        var finding = Assert.Single(Findings("Cwhatever", "[. 3 2 0 1 0]"));
        Assert.Equal(("FL3003", Severity.Hint), (finding.Code, finding.Severity));
        Assert.Equal("(chord Cwhatever)", finding.SourceLine.Substring(finding.Column - 1, finding.Length));
    }

    [Fact]
    public void ASymbolOverASingleLine_StandsForTheBand_AndIsNotJudged() =>
        Assert.Empty(Open(Sheets.WithLine("(chord Ebmaj7) @1 Q 0 3 5 7 |")));

    [Fact]
    public void ASymbolInARiffPlayedTwice_IsToldOfOnce() => Assert.Single(Open(
        Sheets.Top + "riff one\n  @6-1 (chord A) W [. 0 2 2 1 0] | [. 3 2 0 1 0] |\n\nsection All\n  guitar one times 3\n"));

    private static IEnumerable<string> Codes(string symbol, string frets) => Findings(symbol, frets).Select(f => f.Code);

    private static ImmutableArray<Finding> Findings(string symbol, string frets) => Open(Sheets.WithLine($"@6-1 (chord {symbol}) W {frets} |"));

    private static ImmutableArray<Finding> Open(string sheet) => SongWorkspace.Open(new SourceText(sheet)).Findings;
}
