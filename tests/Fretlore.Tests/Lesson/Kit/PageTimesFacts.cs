using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Fretlore.Lesson.Kit;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Syntax;
using Fretlore.Tests.Songs;
using Fretlore.Workspace;

namespace Fretlore.Tests.Lesson.Kit;

/// <summary>What a cursor over the SVG pages needs.</summary>
public partial class PageTimesFacts
{
    private const string Sheet = Sheets.Top + """
        section All
          guitar  upbeat{ @6 Q 0 } | times 2{ Q 3 5 H 7 on 1{ H 5 3 } on 2{ W 0 } } | rest 3 | @1 H 12 = |

        """;

    [Fact]
    public void EveryGroupOfTheSvgPages_HasItsTimes()
    {
        var workspace = SongWorkspace.Open(new SourceText(Sheet));
        var made = Assert.IsType<KitResult.Made>(workspace.MakeKit(new KitOptions(), stop: TestContext.Current.CancellationToken));
        var pages = string.Concat(made.Kit.Files.Where(f => f.Path.EndsWith(".svg", StringComparison.Ordinal)).Select(f => Encoding.UTF8.GetString(f.Bytes.AsSpan())));
        var times = JsonDocument.Parse(made.Kit.Files.Single(f => f.Path == "pages/times.json").Bytes.AsMemory()).RootElement;
        var notes = times.GetProperty("notes").EnumerateArray().ToArray();
        var timed = notes.Select(n => n.GetProperty("id").GetString()!)
            .Concat(notes.Where(n => n.TryGetProperty("held", out _)).SelectMany(n => n.GetProperty("held").EnumerateArray().Select(h => h.GetString()!)));
        // A tied note may have no number of its own.
        Assert.Empty(Groups("note", pages).Except(timed));
        Assert.Empty(notes.Select(n => n.GetProperty("id").GetString()!).Except(Groups("note", pages)));
        var bars = times.GetProperty("bars").EnumerateArray().ToDictionary(b => b.GetProperty("id").GetString()!, b => b.GetProperty("at").EnumerateArray().Select(at => at.GetDouble()).ToArray());
        Assert.All(Groups("bar", pages), bar => Assert.Contains(bar, bars.Keys));
        // A pickup, bar 1 twice, each ending once.
        var quarter = Performer.Play(workspace.Song!).Tempo.SecondsAt(Beats.Quarter);
        Assert.Equal([0.0], bars["bar-1"]);
        Assert.Equal([1, 9], bars["bar-2"].Select(at => Math.Round(at / quarter, 3)));
        Assert.Equal([5.0], bars["bar-3"].Select(at => Math.Round(at / quarter, 3)));
        Assert.Equal([13.0], bars["bar-4"].Select(at => Math.Round(at / quarter, 3)));
        Assert.All(notes, note => Assert.True(note.GetProperty("to").GetDouble() > note.GetProperty("from").GetDouble()));
    }

    private static IEnumerable<string> Groups(string kind, string pages) =>
        GroupId().Matches(pages).Select(m => m.Groups[1].Value).Where(id => id.StartsWith(kind + "-", StringComparison.Ordinal)).Distinct().Order();

    [GeneratedRegex("<g id=\"([a-z]+-[0-9]+)\"")]
    private static partial Regex GroupId();
}
