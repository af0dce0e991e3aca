namespace Fretlore.Tests.Cli;

/// <summary>The help of the command and its verbs.</summary>
public sealed class HelpFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Theory]
    [InlineData("kit")]
    [InlineData("check")]
    [InlineData("explain")]
    [InlineData("format")]
    [InlineData("new")]
    [InlineData("name")]
    [InlineData("scale")]
    [InlineData("shapes")]
    [InlineData("hands")]
    [InlineData("pages")]
    [InlineData("retune")]
    [InlineData("sound")]
    [InlineData("strings")]
    [InlineData("import")]
    [InlineData("export")]
    public void AVerbsHelp_EndsWithAnExampleOfIt(string verb)
    {
        Assert.Equal(0, desktop.Run(verb, "--help"));
        var (_, examples) = (desktop.Out.IndexOf("Usage:", StringComparison.Ordinal), desktop.Out[desktop.Out.IndexOf("Example", StringComparison.Ordinal)..]);
        Assert.Contains($"\n  fretlore {verb} ", examples, StringComparison.Ordinal);
    }

    [Fact]
    public void TheCommandsHelp_NamesEveryVerb()
    {
        Assert.Equal(0, desktop.Run("--help"));
        foreach (var verb in (string[])["kit", "check", "explain", "format", "new", "name", "scale", "shapes", "hands", "pages", "retune", "sound", "strings", "import", "export"])
        {
            Assert.Contains($"\n  {verb} ", desktop.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Version_IsPrinted()
    {
        Assert.Equal(0, desktop.Run("--version"));
        Assert.Matches(@"^\d+\.\d+\.\d+", desktop.Out);
    }

    public void Dispose() => desktop.Dispose();
}
