using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Practice;

/// <summary>The page's code that needs no browser, by its own tests in <c>web/test</c>.</summary>
public sealed class PageCodeFacts
{
    [Fact]
    public void TheTestsOfThePagesCode_AllPass()
    {
        var web = Path.Combine(Repository.Root, "web");
        Assert.SkipUnless(Directory.Exists(Path.Combine(web, "node_modules")), "The npm packages of web are not installed: is there npm?");
        var said = OutsideProgram.Run(OperatingSystem.IsWindows() ? "npm.cmd" : "npm", "--prefix", web, "test");
        Assert.Matches(@"# pass [1-9]\d+", said);
        Assert.Contains("# fail 0", said, StringComparison.Ordinal);
    }
}
