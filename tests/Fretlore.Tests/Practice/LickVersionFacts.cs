using System.Text;
using System.Text.Json;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.TextTab;
using Fretlore.Lesson.Kit;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Tests.Practice;

/// <summary>Licks of the lesson elsewhere on the neck and in other keys, on the practice page as on their cards.</summary>
public sealed class LickVersionFacts
{
    private const string Sheet = """
        title   Swing Gate at Noon
        tuning  E2 A2 D3 G3 B3 E4
        meter   4/4
        tempo   Q = 100
        key     A minor

        part lead "Lead guitar"

        riff blues
          @3 S 5,7,5 7 @2 E 5 8 @2 Q 5 @3 E 7 9 |

        section All
          lead  blues times 4

        lesson
          step "The lick"  teach blues
        """;

    [Fact]
    public void EachVersion_IsTabThatReadsBackInItsPlace()
    {
        var workspace = SongWorkspace.Open(new SourceText(Sheet));
        var made = Assert.IsType<KitResult.Made>(workspace.MakeKit(new KitOptions(), stop: TestContext.Current.CancellationToken));
        var page = made.Kit.Files.FirstOrDefault(file => file.Path == "practice.html");
        Assert.SkipWhen(page is null, string.Join('\n', made.Cautions));
        var versions = SongIn(Encoding.UTF8.GetString(page!.Bytes.AsSpan())).GetProperty("steps")[0].GetProperty("versions").EnumerateArray().ToArray();
        Assert.Contains(versions, v => v.GetProperty("title").GetString()!.StartsWith("Same notes", StringComparison.Ordinal));
        Assert.Contains(versions, v => v.GetProperty("title").GetString()!.StartsWith("In ", StringComparison.Ordinal));
        var played = Steps(workspace.Song!.Riffs[0].Content.SelectMany(bar => bar.Notes).Select(note => note.Sounding.Midi));
        Assert.All(versions, version =>
        {
            var tab = version.GetProperty("tab").GetString()!;
            Assert.All(tab.Split('\n'), line => Assert.InRange(line.Length, 0, TabStyle.Narrowest));
            var read = Assert.IsType<ImportResult.Made>(TextTabReader.Read(Encoding.UTF8.GetBytes(tab))).Song;
            // The same melody, wherever it is played.
            Assert.Equal(played, Steps(read.Parts[0].Bars.SelectMany(bar => bar.Notes).Select(note => note.Sounding.Midi)));
        });
    }

    private static int[] Steps(IEnumerable<int> midi) => [.. midi.Zip(midi.Skip(1), (a, b) => b - a)];

    private static JsonElement SongIn(string html)
    {
        var start = html.IndexOf('>', html.IndexOf("id=\"song\"", StringComparison.Ordinal)) + 1;
        return JsonDocument.Parse(html[start..html.IndexOf("</script>", start, StringComparison.Ordinal)]).RootElement;
    }
}
