using System.Text.RegularExpressions;
using Fretlore.Syntax;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Syntax;

/// <summary>What docs/language.md says is so.</summary>
public partial class LanguageDocumentFacts
{
    public static TheoryData<int, string> Examples => [.. LanguageExamples.All.Select(e => (e.Line, e.Sheet))];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Example_MakesASong_AndNothingIsWrongWithIt(int line, string sheet)
    {
        var bound = Sheets.Read(sheet);
        Assert.True(bound.Diagnostics.IsEmpty, $"The example in line {line}:\n{Sheets.Describe(bound, sheet)}");
        Assert.NotNull(bound.Song);
    }

    [Fact]
    public void EveryWordOfTheLanguage_IsInIt()
    {
        var document = File.ReadAllText(LanguageExamples.Document);
        string[] words =
        [
            .. Vocabulary.SongSettings, .. Vocabulary.PartSettings, .. Vocabulary.RiffSettings, .. Vocabulary.Blocks, .. Vocabulary.Spans,
            .. Vocabulary.Strands, .. Vocabulary.MusicWords, .. Vocabulary.RoadMapRules, .. Vocabulary.LessonSettings,
        ];
        Assert.All(words.Distinct(), word => Assert.Matches($@"(?<![A-Za-z-]){word}(?![A-Za-z-])", document));
    }

    [Fact]
    public void EveryHeading_IsInItsList_AndEveryLinkLeadsToOne()
    {
        var lines = File.ReadAllLines(LanguageExamples.Document);
        var headings = lines.Where(l => l.StartsWith("## ", StringComparison.Ordinal)).Select(l => Anchor(l[3..])).ToList();
        var links = lines.SelectMany(l => Link().Matches(l)).Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(headings, links);
    }

    private static string Anchor(string heading) => NoAnchor().Replace(heading.ToLowerInvariant(), "").Replace(' ', '-');

    [GeneratedRegex(@"^\d+\. \[[^\]]+\]\(#([^)]+)\)$")]
    private static partial Regex Link();

    [GeneratedRegex("[^a-z0-9 -]")]
    private static partial Regex NoAnchor();
}
