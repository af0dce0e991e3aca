using CsCheck;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Binding;

/// <summary>Recordings that a sheet lines up.</summary>
public class RecordingFacts
{
    private const string Music = Sheets.Top + """
        section All
          guitar  upbeat{ @6 Q 0 } | times 3{ W 1 | on 1,2{ 2 } on 3{ 3 } } | 4 |


        """;

    private static readonly (int Number, int Time)[] Order = [(0, 1), (1, 1), (2, 1), (1, 2), (2, 2), (1, 3), (3, 1)];

    [Fact]
    public void BarsOfARecording_HaveTheirTimesToTheMillisecond()
    {
        var song = Sheets.Song(Music + """
            recording "band take 2.wav"
              bar 0        at 0:00.25
              bar 1 time 3 at 0:09
              bar 4        at 61:13.0005
            """);
        var recording = Assert.Single(song.Recordings);
        Assert.Equal("band take 2.wav", recording.Name);
        Assert.Equal([new(0, 1, TimeSpan.FromSeconds(0.25)), new(1, 3, TimeSpan.FromSeconds(9)), new(4, 1, TimeSpan.FromMilliseconds(3_673_000))], recording.Bars.Items);
    }

    [Fact]
    public void ABarIsFoundEachTimeItIsPlayed()
    {
        var song = Sheets.Song(Music);
        var played = PlayOrder.Of(song.Bars);
        // 0 | 1 2 | 1 2 | 1 3 | 4
        Assert.Equal([[0], [1, 3, 5], [2, 4], [6], [7], []], Enumerable.Range(0, 6).Select(number => PlayOrder.PlacesOf(song.Bars, played, number).ToArray()));
    }

    [Fact]
    public void RecordingsWrittenOutAgain_AreTheSame() => Gen.Int[0, 9].Array[7].Select(Gen.Int[0, 3_000_000]).Sample((skips, start) =>
    {
        var bars = new List<RecordedBar>();
        var at = start;
        foreach (var (place, (number, time)) in Order.Index())
        {
            if (skips[place] < 4) continue;
            bars.Add(new(number, time, TimeSpan.FromMilliseconds(at)));
            at += 1 + (skips[place] * 997);
        }
        var song = Sheets.Song(Music) with { Recordings = [new("one.wav", bars.ToValueList()), new("two.flac", [new(1, 1, TimeSpan.Zero)])] };
        Assert.Equal(song.Recordings.ToString(), Sheets.Read(SheetWriter.Write(song).Text).Song!.Recordings.ToString());
        Assert.Equal(song.Recordings, Sheets.Read(SheetWriter.Write(song).Text).Song!.Recordings);
    }, iter: 100);
}
