using System.Text.RegularExpressions;
using Fretlore.Tests.Outside;
using Fretlore.Workspace.Questions;

namespace Fretlore.Tests.Reading;

/// <summary>docs/reading.md says what is so.</summary>
public sealed partial class ReadingDocumentFacts
{
    [Fact]
    public void TheShapesOfTheDocument_HaveTheNamesItGives()
    {
        var rows = Row().Matches(Document);
        Assert.Equal(5, rows.Count);
        foreach (Match row in rows) Assert.Equal(row.Groups["name"].Value, new ChordQuestion(row.Groups["shape"].Value).Ask().Value[0].Symbol);
    }

    [Theory]
    [InlineData("2 x 0 2 3 2", "Root D with its major third, F sharp, in the bass")]
    [InlineData("0 2 2 2 x x", "a fourth in place of the third")]
    [InlineData("8 8 8 7 x 0", "the fifth is left out, which changes nothing")]
    [InlineData("x 0 2 2 x x", "a power chord, neither major nor minor")]
    [InlineData("x 3 2 0 3 0", "a ninth is added")]
    public void ReasonsOfTheDocument_AreSaid(string shape, string words)
    {
        Assert.Contains(words, Document, StringComparison.Ordinal);
        Assert.Contains(words, new ChordQuestion(shape).Ask().Value[0].Reason, StringComparison.Ordinal);
    }

    private static string Document { get; } = File.ReadAllText(Path.Combine(Repository.Root, "docs", "reading.md"));

    [GeneratedRegex(@"^\| `(?<shape>[x\d ]+)` \| (?<name>\S+) \|$", RegexOptions.Multiline)]
    private static partial Regex Row();
}
