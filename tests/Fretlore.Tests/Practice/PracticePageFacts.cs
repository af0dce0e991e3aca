using System.Text;
using System.Text.Json;
using Fretlore.Engraving.Fonts;
using Fretlore.Hands.Plans;
using Fretlore.Performance;
using Fretlore.Practice;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Tests.Practice;

/// <summary>What stands in a practice page, read back from the file.</summary>
public sealed class PracticePageFacts
{
    [Fact]
    public void Times_FollowRepeatsAndTempo()
    {
        var song = DataOf("""
            section All
              guitar  times 2{ @6 Q 0 2 3 5 on 1{ W 7 } on 2{ W 8 } } | (Q = 120) W 0 |
            """);
        var played = song.GetProperty("played").EnumerateArray().ToArray();
        Assert.Equal([0, 1, 0, 2, 3], played.Select(bar => bar.GetProperty("bar").GetInt32()));
        Assert.Equal([0.0, 4, 8, 12, 16], played.Select(bar => bar.GetProperty("start").GetDouble()));
        Assert.Equal([0.0, 1, 2, 3], Numbers(played[0], "beats"));
        Assert.Equal([16.0, 16.5, 17, 17.5], Numbers(played[4], "beats"));
        Assert.Equal([1.0, 1, 1, 1], Numbers(played[0], "count"));
        Assert.Equal(18, song.GetProperty("seconds").GetDouble());
    }

    [Fact]
    public void ARecordingOfTheSheet_IsLinedUpInTheOrderPlayed()
    {
        var recording = Assert.Single(DataOf("""
            section All
              guitar  times 2{ @6 Q 0 2 3 5 on 1{ W 7 } on 2{ W 8 } } | (Q = 120) W 0 |

            recording "take.wav"
              bar 1        at 0:01.5
              bar 1 time 2 at 0:10
              bar 4        at 0:18.25
            """).GetProperty("recordings").EnumerateArray());
        Assert.Equal("take.wav", recording.GetProperty("name").GetString());
        var points = recording.GetProperty("points").EnumerateArray().Select(p => (p.GetProperty("song").GetDouble(), p.GetProperty("take").GetDouble()));
        Assert.Equal([(0.0, 1.5), (8, 10), (16, 18.25)], points);
    }

    [Fact]
    public void APickup_IsCountedThroughWhatItLeavesOfItsBar()
    {
        var song = DataOf("""
            section All
              guitar  upbeat{ @6 Q 0 } | W 2 |
            """);
        var pickup = song.GetProperty("played")[0];
        Assert.Equal([0.0], Numbers(pickup, "beats"));
        Assert.Equal(7, Numbers(pickup, "count").Length);
    }

    [Fact]
    public void ACapo_IsOnTheNeckFromWhereItIsPut()
    {
        var part = DataOf("""
            section All
              guitar  @6 W 0 | (capo 2 on 5-3) W 0 | (capo 3) W 0 |
            """).GetProperty("parts")[0];
        Assert.Equal(0, part.GetProperty("capo").GetInt32());
        var moves = part.GetProperty("capos").EnumerateArray().ToArray();
        Assert.Equal([(4.0, 2), (8, 3)], moves.Select(move => (move.GetProperty("at").GetDouble(), move.GetProperty("fret").GetInt32())));
        Assert.Equal([5.0, 3], Numbers(moves[0], "strings"));
        Assert.False(moves[1].TryGetProperty("strings", out _));
    }

    [Fact]
    public void ARiff_IsAStretchForEachTimeItIsPlayed()
    {
        var song = DataOf("""
            riff low
              @6 Q 0 2 3 5 |

            section All
              guitar  low times 2, @5 W 0 | low
            """);
        var riffs = song.GetProperty("stretches").EnumerateArray().Where(s => s.GetProperty("kind").GetString() == "riff").ToArray();
        Assert.Equal([0, 1, 3], riffs.Select(s => s.GetProperty("first").GetInt32()));
        Assert.All(riffs, s => Assert.Equal(1, s.GetProperty("count").GetInt32()));
    }

    [Fact]
    public void EveryNoteOfAPart_HasItsGroupOnThePages()
    {
        var song = DataOf("""
            section All
              guitar  @6 Q 0 2 H 3 | = @1 5,7 |
            """, out var html);
        var notes = song.GetProperty("parts")[0].GetProperty("notes").EnumerateArray().Select(note => note.GetProperty("id").GetInt32());
        var pages = PagesOf(html, song.GetProperty("views")[0].GetProperty("id").GetString()!);
        Assert.All(notes, id => Assert.Contains($"id=\"note-{id}\"", pages, StringComparison.Ordinal));
        Assert.Contains("id=\"bar-2\"", pages, StringComparison.Ordinal);
    }

    [Fact]
    public void NotesSayTheirFingerDegreeAndSpelling()
    {
        var note = DataOf("""
            section All
              guitar  @6 W 3 |
            """).GetProperty("parts")[0].GetProperty("notes")[0];
        Assert.Equal("G2", note.GetProperty("pitch").GetString());
        Assert.Equal(6, note.GetProperty("string").GetInt32());
        Assert.Matches("^[1-4]$", note.GetProperty("finger").GetString()!);
    }

    [Fact]
    public void AFreeStretch_HasTheRulesOfEachOfItsBars()
    {
        var song = DataOf("""
            roadmap way
              scale  A minor pentatonic on strings 1-3
              from   fret 12 to fret 5
              aim    A in bar 2
              avoid  open strings
              end    E

            section All
              guitar  roadmap way 4 bars
            """);
        var bars = song.GetProperty("roadMaps")[0].GetProperty("bars").EnumerateArray().ToArray();
        Assert.Equal(4, bars.Length);
        Assert.Equal(["1", "b3", "4", "5", "b7"], bars[0].GetProperty("scale").GetProperty("tones").EnumerateArray().Select(tone => tone.GetProperty("degree").GetString()));
        Assert.Equal([0, 1, 0, 1], bars.Select(bar => bar.GetProperty("aims").GetArrayLength()));
        Assert.All(bars, bar => Assert.Equal("avoid open strings", Assert.Single(bar.GetProperty("rules").EnumerateArray()).GetString()));
        Assert.All(bars, bar => Assert.Equal(3, bar.GetProperty("lowestString").GetInt32()));
        // The way along the neck: each bar's frets lie lower than the bar's before.
        var lowest = bars.Select(bar => bar.GetProperty("lowestFret").GetInt32()).ToArray();
        Assert.Equal(lowest.OrderDescending(), lowest);
        Assert.Equal((12, 5), (bars[0].GetProperty("highestFret").GetInt32(), lowest[^1]));
    }

    [Theory]
    [InlineData("</script><img src=x onerror=alert(1)>")]
    [InlineData("<!--<script>")]
    [InlineData("&lt;b&gt; \" '")]
    public void TextsOfTheSheet_CantEndTheElementTheyStandIn(string title)
    {
        var html = PageOf("section A\n  guitar @6 W 0 |\n", title);
        Assert.Equal(title.Trim(), Song(html).GetProperty("title").GetString());
        // The page's own elements, and one for the song and each set of pages.
        Assert.Equal(Count(PageOf("section A\n  guitar @6 W 0 |\n", "Plain"), "</script"), Count(html, "</script"));
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void ThePage_AllowsNothingFromAnyNetwork()
    {
        var html = PageOf("section A\n  guitar @6 W 0 |\n");
        Assert.Contains("default-src 'none'", html, StringComparison.Ordinal);
        Assert.Contains("connect-src 'none'", html, StringComparison.Ordinal);
        Assert.DoesNotMatch("<link |<script[^>]* src=|@import|url\\(http", html);
    }

    [Fact]
    public void TheSameSong_GivesTheSameBytes() =>
        Assert.Equal(PageOf("section A\n  guitar @6 W 0 |\n"), PageOf("section A\n  guitar @6 W 0 |\n"));

    internal static string PageOf(string content, string title = "Ash")
    {
        var text = $"title {title}\ntuning E2 A2 D3 G3 B3 E4\nmeter 4/4\ntempo Q = 60\npart guitar \"Guitar\"\n{content}\n";
        var workspace = SongWorkspace.Open(new SourceText(text));
        var song = Assert.IsType<Song>(workspace.Song);
        var made = PracticePage.Make(new PracticeSource
        {
            Played = Performer.Play(song),
            Reading = SongReader.Read(song),
            Hands = HandPlanner.Plan(song),
            Fonts = new FontLibrary(),
            Sound = new PracticeSound(0, [], null),
            InWords = rule => rule.ToString(),
        });
        if (made is PracticeResult.LeftOut leftOut) Assert.Skip(leftOut.Reason);
        return Encoding.UTF8.GetString(((PracticeResult.Made)made).Html.AsSpan());
    }

    private static JsonElement DataOf(string content) => DataOf(content, out _);

    private static JsonElement DataOf(string content, out string html) => Song(html = PageOf(content));

    private static JsonElement Song(string html) => JsonDocument.Parse(Block(html, "song")).RootElement;

    private static string PagesOf(string html, string id)
    {
        using var zip = new System.IO.Compression.GZipStream(new MemoryStream(Convert.FromBase64String(Block(html, id))), System.IO.Compression.CompressionMode.Decompress);
        return string.Concat(JsonDocument.Parse(zip).RootElement.GetProperty("pages").EnumerateArray().Select(page => page.GetString()));
    }

    private static string Block(string html, string id)
    {
        var start = html.IndexOf('>', html.IndexOf($"id=\"{id}\"", StringComparison.Ordinal)) + 1;
        return html[start..html.IndexOf("</script>", start, StringComparison.Ordinal)];
    }

    private static double[] Numbers(JsonElement element, string name) => [.. element.GetProperty(name).EnumerateArray().Select(n => n.GetDouble())];

    private static int Count(string text, string part) => text.Split(part).Length - 1;
}
