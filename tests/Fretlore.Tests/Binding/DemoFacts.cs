using Fretlore.Syntax;
using Fretlore.Tests.Outside;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Binding;

public sealed class DemoFacts
{
    public static TheoryData<string> Demos => [.. Directory.GetFiles(Path.Combine(Repository.Root, "demo"), "*.lore").Select(f => Path.GetFileName(f)).Order()];

    [Theory]
    [MemberData(nameof(Demos))]
    public void EveryDemo_IsValidWithoutAWarning(string name)
    {
        var text = File.ReadAllText(Path.Combine(Path.Combine(Repository.Root, "demo"), name));
        var bound = Sheets.Read(text);
        Assert.True(bound.Diagnostics.All(d => d.Severity == Severity.Hint), Sheets.Describe(bound, text));
        Assert.NotNull(bound.Song);
    }
}
