using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Syntax;

/// <summary>docs/diagnostics.md lists every finding there is.</summary>
public class DiagnosticDocumentFacts
{
    private static string Document => Path.Combine(Repository.Root, "docs", "diagnostics.md");

    [Fact]
    public void Document_IsWhatTheFactoriesSay()
    {
        var expected = DiagnosticDocument.Text();
        // With this set the page is written anew instead of compared.
        if (Environment.GetEnvironmentVariable("FRETLORE_WRITE_DOCS") is "1") File.WriteAllText(Document, expected);
        var actual = File.Exists(Document) ? File.ReadAllText(Document).ReplaceLineEndings("\n") : "";
        Assert.True(expected == actual, "docs/diagnostics.md is stale: run the tests once with FRETLORE_WRITE_DOCS=1.");
    }

    [Fact]
    public void EveryCode_HasOneMeaning() => Assert.All(
        DiagnosticDocument.All.GroupBy(d => d.Code), same => Assert.Single(same));
}
