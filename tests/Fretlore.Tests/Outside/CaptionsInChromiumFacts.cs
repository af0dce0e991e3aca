using System.Text.Json;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Captions;
using Fretlore.Lesson.Plans;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Outside;

/// <summary>Captions, read by a browser's own text-track reader (Chromium) and by ffmpeg's.</summary>
public class CaptionsInChromiumFacts
{
    private const string Page = """
        <!doctype html><meta charset="utf-8"><video><track id="t" kind="captions" src="data:text/vtt;base64,{0}"></video><pre id="out">not loaded</pre>
        <script>
        const track = document.getElementById("t"), out = document.getElementById("out");
        track.addEventListener("error", () => out.textContent = "error");
        track.addEventListener("load", () => out.textContent = JSON.stringify([...track.track.cues].map(c => [c.startTime, c.endTime, c.getCueAsHTML().textContent])));
        track.track.mode = "hidden";
        </script>
        """;

    [Fact]
    public void EveryCaption_IsReadWithItsTimesAndLines()
    {
        var song = DemoSongs.Load("lanterns-on-the-weir.lore");
        song = song with { Info = song.Info with { Title = "Rock & <b>Roll</b> --> ü" } };
        var plan = Assert.IsType<FilmPlanResult.Made>(FilmPlanner.Plan(Performer.Play(song), SongReader.Read(song), HandPlanner.Plan(song))).Plan;
        var track = CaptionMaker.OfFilm(plan);
        var vtt = Convert.ToBase64String(System.Text.Encoding.UTF8.GetBytes(WebVtt.Write(track)));
        using var cues = JsonDocument.Parse(Browser.Read(Page.Replace("{0}", vtt, StringComparison.Ordinal)));
        Assert.Equal(
            track.Captions.Select(c => (c.Start / 1000.0, c.End / 1000.0, string.Join('\n', c.Lines))),
            cues.RootElement.EnumerateArray().Select(c => (c[0].GetDouble(), c[1].GetDouble(), c[2].GetString()!)));
        Assert.Contains(track.Captions, c => string.Join(' ', c.Lines).Contains("Rock & <b>Roll</b> --> ü", StringComparison.Ordinal));
    }

    [Fact]
    public void EveryCaption_IsReadByFfmpegToo()
    {
        var song = DemoSongs.Load("salt-furnace.lore");
        var track = CaptionMaker.OfFilm(Assert.IsType<FilmPlanResult.Made>(FilmPlanner.Plan(Performer.Play(song), SongReader.Read(song), HandPlanner.Plan(song))).Plan);
        using var file = new TemporaryFile(".vtt", System.Text.Encoding.UTF8.GetBytes(WebVtt.Write(track)));
        var subrip = OutsideProgram.Run("ffmpeg", "-v", "error", "-i", file.Path, "-f", "srt", "-");
        Assert.Equal(track.Captions.Count, subrip.Split('\n').Count(line => line.Contains(" --> ", StringComparison.Ordinal)));
    }
}
