using System.Text.Json;
using Fretlore.Lesson.Kit;
using Fretlore.Syntax;
using Fretlore.Tests.Outside;
using Fretlore.Workspace;

namespace Fretlore.Tests.Practice;

/// <summary>What a browser found on a practice page: the page is made once, and each check runs when it is first asked for.</summary>
public sealed class BrowserReport : IDisposable
{
    private static readonly string[] Browsers = ["chromium", "chromium-browser", "google-chrome"];

    // A note on each half second, then a long tone, then bars that are over in an eighth of a second.
    private const string Sheet = """
        title   Pulse and Tone
        tuning  E2 A2 D3 G3 B3 E4
        meter   4/4
        tempo   Q = 120
        key     A minor

        part one "One" sound clean
        part two "Two" sound clean

        riff beat
          @1 E 5 R 5 R 5 R 5 R |

        riff ones
          @5 E 0 R Q R H R |

        roadmap way
          fixed beat in bar 1
          scale A minor pentatonic on strings 1-3
          from fret 5 to fret 8
          density Q to E
          end A

        section Beats
          one  beat times 4
          two  rest 4

        section Tone
          one  @3 W 2 | = |
          two  rest 2

        section Tiny
          one  (meter 1/8) (Q = 240) @2 E 3 | E 5 |
          two  rest 2

        section End
          one  (meter 4/4) (Q = 120) @5 W 0 |
          two  @4 W 2 |

        section Solo
          one  roadmap way 4 bars
          two  ones times 4

        lesson
          step "The beat"  teach beat  at 60% 80% 100%  say "Count."

        recording "band.wav"
          bar 1        at 0:01.5
          bar 1 time 2 at 0:04.5

        """;

    internal const string HostileTitle = "</script><img src=x onerror=alert(1)>";

    private const string HostileSheet = $"""
        title   {HostileTitle}
        artist  <svg onload=alert(2)>
        rights  &lt;i&gt; <!-- <script>
        tuning  E2 A2 D3 G3 B3 E4
        meter   4/4
        tempo   Q = 120
        part one "<img src=x onerror=alert(4)>"
        riff beat
          @1 "<img src=x onerror=alert(5)>" Q 5 5 5 5 |
        section </script><script>alert(6)</script>
          one beat times 2
        lesson
          step "<img src=x onerror=alert(7)>" teach beat say "</script><img src=x onerror=alert(8)>"
        recording "</script><img src=x onerror=alert(9)>"
          bar 1 at 0:01

        """;

    private readonly Dictionary<string, JsonElement> found = [];
    private readonly Lazy<TemporaryFile> page = new(() => PageOf(Sheet));
    private readonly Lazy<TemporaryFile> hostile = new(() => PageOf(HostileSheet, withSound: false));

    internal JsonElement this[string check]
    {
        get
        {
            if (found.TryGetValue(check, out var known)) return known;
            var browser = Browsers.Select(PathOf).OfType<string>().FirstOrDefault();
            Assert.SkipWhen(browser is null, "chromium is not installed: run ./test.");
            var report = JsonDocument.Parse(OutsideProgram.Node("practice/check.mjs", browser, page.Value.Path, hostile.Value.Path, check)).RootElement;
            Assert.Empty(report.GetProperty("requests").EnumerateArray().Select(request => request.GetString()));
            var result = report.GetProperty(check);
            Assert.False(result.ValueKind == JsonValueKind.Object && result.TryGetProperty("failed", out var failed), result.ToString());
            return found[check] = result;
        }
    }

    public void Dispose()
    {
        if (page.IsValueCreated) page.Value.Dispose();
        if (hostile.IsValueCreated) hostile.Value.Dispose();
    }

    private static TemporaryFile PageOf(string sheet, bool withSound = true)
    {
        var workspace = SongWorkspace.Open(new SourceText(sheet));
        Assert.False(workspace.HasErrors, string.Join('\n', workspace.Findings));
        var made = Assert.IsType<KitResult.Made>(workspace.MakeKit(new KitOptions { SoundRoom = withSound ? () => new MemoryStream() : null }));
        var file = made.Kit.Files.FirstOrDefault(f => f.Path == "practice.html");
        Assert.SkipWhen(file is null, string.Join('\n', made.Cautions));
        return new TemporaryFile(".html", [.. file!.Bytes]);
    }

    private static string? PathOf(string program) => Environment.GetEnvironmentVariable("PATH")?.Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);
}
