using CsCheck;
using Fretlore.Binding;
using Fretlore.Syntax;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Syntax;

public class FormatFacts
{
    [Fact]
    public void TimeAndPlace_AreSaidAgainInEachBar() => Assert.Equal(
        """
        riff a-riff
          @654 ESS 0 0 0 7 0m 0m | @654 ESS 5 5 5 S @5 4,6,4 0 | @5 S 7@4 0 | E @3 8 7 |

        """,
        Formatted("riff a-riff\n @654 ESS 0 0 0   7 0m 0m|5 5 5 S @5 4,6,4 0|7@4 0|E @3 8 7|"));

    [Fact]
    public void PlaceAlone_IsNotSaidAgainWhereNoFretNeedsIt() => Assert.Equal(
        "riff a-riff\n  @3 Q 7+ | Q = = | H #lift R |\n", Formatted("riff a-riff\n  @3 Q 7+ | = = | H #lift R |"));

    [Fact]
    public void EachStrand_HasATimeAndPlaceOfItsOwn() => Assert.Equal(
        "riff a-riff\n  bass{ @6 H 0 0 } @1 Q 5 5 | @1 Q bass{ @6 H 3 } 7 7 |\n",
        Formatted("riff a-riff\n  bass{ @6 H 0 0 } @1 Q 5 5 | bass{ 3 } 7 7 |"));

    [Fact]
    public void ReplacedBar_KeepsWhatItTakesOverFromTheBarItReplaces() => Assert.Equal(
        "riff turn = furnace with bars 1-2: 0 0 | 5 5 without last bar\n",
        Formatted("riff turn=furnace   with bars 1 - 2 : 0 0 | 5 5 without  last  bar"));

    [Fact]
    public void Columns_AreAligned() => Assert.Equal(
        """
        title   Salt Furnace
        tempo   Q = 96

        part rhythm "Rhythm guitar"  sound driven
        part lead   "Lead"           capo 2

        shape lift  [7 7 7 9 . .]
        shape brace [0 0 . . . .]

        section Verse
          rhythm  furnace times 2, furnace
          lead    rest 8

        lesson
          step "One"    teach furnace       at 60% 80%
          step "Three"  teach furnace.turn  say "Slow."

        """,
        Formatted("""
            title Salt  Furnace
            tempo Q=96
            part rhythm "Rhythm guitar" sound driven
            part lead "Lead" capo 2
            shape lift [7 7 7 9 . .]
            shape brace [0 0 . . . .]
            section Verse
             rhythm furnace times 2,furnace
             lead rest 8
            lesson
             step "One" teach furnace at 60% 80%
             step "Three" teach furnace.turn say "Slow."
            """));

    [Fact]
    public void LongLines_AreBrokenAtBarLines()
    {
        var bars = string.Concat(Enumerable.Repeat("@2 S 10 12 13 12 10 12 13 12 10 12 13 12 10 12 13 12 | ", 3));
        var lines = Formatted("riff a-riff\n  " + bars).TrimEnd().Split('\n');
        Assert.Equal(4, lines.Length);
        Assert.All(lines[1..], line => Assert.EndsWith("|", line));
    }

    [Fact]
    public void Comments_StayWhereTheyStood() => Assert.Equal(
        """
        -- a first remark

        title Song  -- after the title

        -- before the riff
        riff a-riff  -- beside it
          -- within it
          @1 Q 5 7  -- beside the music
          8 |
          -- after the music
        -- the end

        """.Replace("title Song", "title   Song"),
        Formatted("""
            -- a first remark

            title Song -- after the title
            -- before the riff
            riff a-riff -- beside it
                 -- within it
              @1 Q 5 7 -- beside the music
              8 |
                 -- after the music
            -- the end
            """));

    [Fact]
    public void SheetWithErrors_IsRefusedAndLeftAsItIs()
    {
        const string text = "riff  a-riff\n  @1   Q 5 pm{ 7";
        Assert.Equal(new FormattedSheet(text, IsRefused: true), SheetFormat.Format(Sheet.Parse(text)));
    }

    [Fact]
    public void LineEnds_StayAsTheyAre() => Assert.Equal(
        "title   Song\r\n\r\nriff a-riff\r\n  @1 Q 5\r\n", Formatted("title Song\r\nriff a-riff\r\n @1 Q 5"));

    [Theory]
    [InlineData(SheetSamples.Furnace)]
    [InlineData(SheetSamples.EverySign)]
    public void ValidSheets_KeepTheirTokens_AndComeOutTheSameTwice(string text) => HoldsTokens(text);

    [Fact]
    public void AnySheetWithoutErrors_KeepsItsTokens_AndComesOutTheSameTwice() => FormatInputs.Sheets.Sample(HoldsTokens, iter: 2000);

    [Fact]
    public void Format_KeepsTheSong()
    {
        string[] demos = [.. Directory.GetFiles(Path.Combine(Repository.Root, "demo"), "*.lore").Select(File.ReadAllText)];
        Assert.NotEmpty(demos);
        Assert.All([.. demos, .. LanguageExamples.All.Select(e => e.Sheet)], HoldsSong);
        ParserProperties.Mutated(demos).Sample(HoldsSong, iter: 300);
    }

    private static void HoldsSong(string text)
    {
        var parsed = Sheet.Parse(text);
        var formatted = SheetFormat.Format(parsed);
        if (formatted.IsRefused) return;
        var before = SongBinder.Bind(parsed);
        var after = SongBinder.Bind(Sheet.Parse(formatted.Text));
        // A missing blank is put in, and a wrong place that is said again is found again; nothing else is found or lost.
        Assert.Equal(Codes(before), Codes(after));
        Assert.Equal(before.Song, after.Song);

        static IEnumerable<string> Codes(BoundSong song) => song.Diagnostics.Select(d => d.Code).Where(code => code != "FL1071").Distinct().Order();
    }

    private static string Formatted(string text)
    {
        var formatted = SheetFormat.Format(Sheet.Parse(text));
        Assert.False(formatted.IsRefused);
        return formatted.Text;
    }

    private static void HoldsTokens(string text)
    {
        var parsed = Sheet.Parse(text);
        var formatted = SheetFormat.Format(parsed);
        if (formatted.IsRefused) return;
        var again = Sheet.Parse(formatted.Text);
        Assert.Empty(again.Diagnostics);
        Assert.Equal(formatted.Text, SheetFormat.Format(again).Text);
        Assert.Equal(Comments(text), Comments(formatted.Text));
        CheckTokens(Tokens(parsed), Tokens(again));
    }

    /// <summary>Every token is there, in order, and what was added is a time or a place.</summary>
    private static void CheckTokens(List<(string Text, bool IsState)> before, List<(string Text, bool IsState)> after)
    {
        var next = 0;
        foreach (var item in after)
        {
            if (next < before.Count && before[next] == item) next++;
            else Assert.True(item.IsState, $"{item.Text} was added");
        }
        Assert.Equal(before.Count, next);
    }

    /// <summary>Times and places whole, and every other token.</summary>
    private static List<(string, bool)> Tokens(ParsedSheet sheet)
    {
        List<(string, bool)> found = [];
        Visit(sheet.Root);
        return found;

        void Visit(SyntaxNode node)
        {
            foreach (var child in node.Children)
            {
                if (child is TimeSyntax or WhereSyntax) found.Add((string.Concat(((SyntaxNode)child).Children.Select(t => t.ToString())), true));
                else if (child is SyntaxNode inner) Visit(inner);
                else if (child is SyntaxToken { IsMissing: false, Kind: not TokenKind.EndOfFile } token) found.Add((token.Text, false));
            }
        }
    }

    private static List<string> Comments(string text) =>
    [
        .. Sheet.Parse(text).Root.DescendantsAndSelf().SelectMany(node => node.Children.OfType<SyntaxToken>()).OrderBy(t => t.Span.Start)
            .SelectMany(t => t.LeadingTrivia.Split('\n')).Select(line => line.Trim()).Where(line => line.Length > 0),
    ];
}
