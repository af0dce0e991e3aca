using System.Text.Json;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Diagrams;
using Fretlore.Lesson.Film;
using Fretlore.Lesson.Plans;
using Fretlore.Lesson.Prompter;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Outside;

/// <summary>The prompter page as a browser runs it.</summary>
public class PrompterInChromiumFacts
{
    [Fact]
    public void Prompter_ThatRuns_IsAtTheLineOfItsTime()
    {
        var (html, plan) = Page("salt-furnace.lore");
        var page = Browser.Read(Reporting(html, "setTimeout(() => report(), 20000);"), 20_500, "#go");
        using var at = JsonDocument.Parse(page);
        // The browser's own clock is a little behind at each frame.
        Assert.InRange(at.RootElement.GetProperty("time").GetDouble(), 19.5, 20.1);
        var segments = FilmSegment.Of(plan);
        Assert.Equal(segments[1].Title, at.RootElement.GetProperty("chapter").GetString());
    }

    [Fact]
    public void FootSwitch_MovesLineByLine_AndArrowsByChapter()
    {
        var (html, plan) = Page("salt-furnace.lore");
        const string Keys = """
            const press = (key) => document.dispatchEvent(new KeyboardEvent("keydown", { key }));
            const seen = [];
            for (const key of ["PageDown", "PageDown", "PageUp", "ArrowDown", "PageDown", "ArrowDown", "ArrowUp", "Home", "PageUp", "End", "PageDown", " "]) { press(key); seen.push(now); }
            report(seen);
            """;
        using var at = JsonDocument.Parse(Browser.Read(Reporting(html, Keys), 1000));
        var firsts = new List<int> { 0 };
        foreach (var segment in FilmSegment.Of(plan)) firsts.Add(firsts[^1] + segment.Sentences.Count + segment.Plays.Count);
        var end = firsts[^1] - 1;
        Assert.Equal([1, 2, 1, firsts[1], firsts[1] + 1, firsts[2], firsts[1], 0, 0, end, end, end], at.RootElement.GetProperty("seen").EnumerateArray().Select(n => n.GetInt32()));
    }

    [Fact]
    public void Step_ShowsItsShapes_AndFramesTheNextOneNamed()
    {
        var (html, _) = Page("salt-furnace.lore");
        const string Keys = """
            const shapes = data.chapters.findIndex((c) => c.pictures.some((p) => p.title === "ring A"));
            at(items.findIndex((i) => i.c === shapes));
            report([...document.querySelectorAll("aside figcaption")].map((f) => f.textContent));
            """;
        using var at = JsonDocument.Parse(Browser.Read(Reporting(html, Keys), 1000));
        Assert.Equal(["ring A", "ring F", "ring D", "ring G"], at.RootElement.GetProperty("seen").EnumerateArray().Select(n => n.GetString()).Take(4));
    }

    [Fact]
    public void Page_AsksForNothingFromOutside_AndHoldsTextsThatLookLikeMarkup()
    {
        var song = DemoSongs.Load("salt-furnace.lore");
        song = song with { Info = song.Info with { Title = "</script><b>A & B" } };
        var (html, _) = Page(song);
        Assert.DoesNotContain("http", html.Replace("http-equiv", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", html, StringComparison.Ordinal);
        using var at = JsonDocument.Parse(Browser.Read(Reporting(html, "report(data.title)"), 1000));
        Assert.Equal("</script><b>A & B", at.RootElement.GetProperty("seen").GetString());
    }

    private static string Reporting(string html, string script) => html.Replace("</html>", $$"""
        <pre id="out">nothing</pre>
        <script>
        const report = (seen) => { document.getElementById("out").textContent = JSON.stringify({ seen, time, chapter: data.chapters[items[now].c].title }); };
        {{script}}
        </script></html>
        """, StringComparison.Ordinal);

    private static (string Html, FilmPlan Plan) Page(string demo) => Page(DemoSongs.Load(demo));

    private static (string Html, FilmPlan Plan) Page(Fretlore.Score.Song song)
    {
        var hands = HandPlanner.Plan(song);
        var plan = Assert.IsType<FilmPlanResult.Made>(FilmPlanner.Plan(Performer.Play(song), SongReader.Read(song), hands)).Plan;
        return (PrompterPage.Write(song, plan, new StepDiagrams(song, hands)), plan);
    }
}
