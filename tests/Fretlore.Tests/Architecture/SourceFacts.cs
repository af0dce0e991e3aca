using System.Text.RegularExpressions;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Architecture;

/// <summary>Rules that every source file keeps.</summary>
public sealed partial class SourceFacts
{
    private const int MostLines = 400;

    [Fact]
    public void NoFile_IsLongerThanAPersonCanKeepInMind()
    {
        var tooLong = Sources("src", "tests", "bench")
            .Select(file => (File: file, Lines: File.ReadLines(file).Count()))
            .Where(file => file.Lines > MostLines && !file.File.EndsWith("Table.cs", StringComparison.Ordinal));
        Assert.Empty(tooLong.Select(file => $"{file.File}: {file.Lines} lines"));
    }

    [Fact]
    public void ADiagnosticCode_HasOneMeaning()
    {
        var uses = Sources("src").SelectMany(file => Code().Matches(File.ReadAllText(file)).Select(match => (Code: match.Value, File: file)));
        var doubled = uses.GroupBy(use => use.Code).Where(code => code.Count() > 1);
        Assert.Empty(doubled.Select(code => $"{code.Key}: {string.Join(", ", code.Select(use => Path.GetFileName(use.File)))}"));
    }

    [Fact]
    public void NoTypeOrFolder_IsAHeapOfHelpers()
    {
        var heaps = Sources("src").Where(file => Heap().IsMatch(Path.GetRelativePath(Repository.Root, file)));
        Assert.Empty(heaps);
    }

    [Fact]
    public void NothingInSources_NamesThisMachinesPaths()
    {
        var named = Sources("src", "bench").Where(file => MachinePath().IsMatch(File.ReadAllText(file)));
        Assert.Empty(named);
    }

    private static IEnumerable<string> Sources(params string[] folders) => folders
        .Select(folder => Path.Combine(Repository.Root, folder))
        .Where(Directory.Exists)
        .SelectMany(folder => Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories))
        .Where(file => !Built().IsMatch(Path.GetRelativePath(Repository.Root, file)));

    [GeneratedRegex("""(?<=")FL\d{4}(?=")""")]
    private static partial Regex Code();

    [GeneratedRegex(@"(Utils?|Utilities|Helpers?|Managers?|Misc|Common)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Heap();

    [GeneratedRegex("\"(/home/|/work/|/Users/|C:\\\\)")]
    private static partial Regex MachinePath();

    [GeneratedRegex(@"(^|[\\/])(bin|obj)[\\/]")]
    private static partial Regex Built();
}
