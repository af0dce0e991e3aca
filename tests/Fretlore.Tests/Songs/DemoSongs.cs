using Fretlore.Score;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Songs;

/// <summary>The songs of demo/, bound.</summary>
internal static class DemoSongs
{
    public static TheoryData<string> Names => [.. Directory.GetFiles(Path.Combine(Repository.Root, "demo"), "*.lore").Select(f => Path.GetFileName(f)).Order()];

    public static Song Load(string name) => Sheets.Read(File.ReadAllText(Path.Combine(Repository.Root, "demo", name))).Song
        ?? throw new InvalidDataException(name);
}
