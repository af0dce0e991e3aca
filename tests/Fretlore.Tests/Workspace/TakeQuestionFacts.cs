using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Syntax;
using Fretlore.Workspace;
using Fretlore.Workspace.Listening;

namespace Fretlore.Tests.Workspace;

/// <summary>The times of a take, put into its sheet.</summary>
public class TakeQuestionFacts
{
    private const string Played = """
        title   Stairs
        tuning  E2 A2 D3 G3 B3 E4
        tempo   Q = 100

        riff up
          @5 E 0 2 3 5 @4 2 3 5 7 | @3 E 4 5 7 5 @4 Q 7 5 |

        section One
          up times 3 | @2 Q 5 7 8 10 | @1 W 7 |

        section Two
          tempo Q = 132
          up times 2 | @5 W 0 |

        """;

    private static readonly byte[] Take = TakeOf(Played);

    [Fact]
    public void TimesInTheSheet_SayWhereBarsBegin_AndThoseBetweenGoEvenly()
    {
        var open = Open(Played);
        var take = Ask(open, "up.wav");
        var played = Performer.Play(open.Song!);
        Assert.True(take.Recording.Bars.Count < take.Bars.Length);
        var written = Open(take.Sheet);
        Assert.False(written.HasErrors);
        Assert.Equal(take.Recording, Assert.Single(written.Song!.Recordings));
        foreach (var (bar, index) in take.Bars.Select((bar, index) => (bar, index)))
        {
            Assert.Equal(played.Bars[index].StartSeconds, bar.At!.Value.TotalSeconds, 0.03);
            Assert.Equal(bar.At.Value.TotalSeconds, Between(take.Recording, played, played.Bars[index].StartSeconds), 0.0125);
        }
    }

    [Fact]
    public void TimesOfTheSameFile_AreReplaced_AndWhatIsWrittenAroundThemStays()
    {
        var sheet = Played + "-- Before.\nrecording \"up.wav\"\n  bar 1 at 0:07.5 -- by ear\n  bar 2 at 0:09.5 -- in the kitchen\n\n-- After.\nrecording \"other.wav\"\n  bar 1 at 0:01\n";
        var take = Ask(Open(sheet), "up.wav");
        var written = Open(take.Sheet);
        Assert.False(written.HasErrors);
        Assert.Equal(["up.wav", "other.wav"], written.Song!.Recordings.Select(r => r.Name));
        Assert.Equal(take.Recording, written.Song.Recordings[0]);
        Assert.StartsWith(Played + "-- Before.\nrecording \"up.wav\"\n", take.Sheet, StringComparison.Ordinal);
        Assert.Contains("-- by ear\n", take.Sheet, StringComparison.Ordinal);
        Assert.Contains("-- in the kitchen\n", take.Sheet, StringComparison.Ordinal);
        Assert.EndsWith("\n-- After.\nrecording \"other.wav\"\n  bar 1 at 0:01\n", take.Sheet, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("recording \"up.wav\"\r\n  bar 1 at 0:07.5 -- by ear\r\n")]
    public void LineEnds_StayOfTheSheetsKind(string before)
    {
        var take = Ask(Open(Played.ReplaceLineEndings("\r\n") + before), "up.wav");
        Assert.DoesNotContain("\n", take.Sheet.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(take.Recording, Assert.Single(Open(take.Sheet).Song!.Recordings));
    }

    [Fact]
    public void ARepeatedBar_IsNamedWithWhichTimeItIs()
    {
        var take = Ask(Open(Played), "up.wav");
        Assert.Contains(take.Bars, bar => bar is { Number: 1, Time: 3 });
    }

    private static double Between(Recording recording, PerformedSong played, double seconds)
    {
        var points = recording.Bars.Select(bar => (At: played.Bars[PlayOrder.PlacesOf(played.Song.Bars, PlayOrder.Of(played.Song.Bars), bar.Number)[bar.Time - 1]].StartSeconds, Heard: bar.At.TotalSeconds)).ToArray();
        var next = Array.FindIndex(points, 1, point => point.At >= seconds);
        var (a, b) = (points[next - 1], points[next]);
        return a.Heard + (b.Heard - a.Heard) * (seconds - a.At) / (b.At - a.At);
    }

    private static LinedUpTake Ask(SongWorkspace sheet, string name) =>
        Assert.IsType<TakeAnswer.Found>(new TakeQuestion(name, []).Ask(sheet, new MemoryStream(Take), TestContext.Current.CancellationToken)).Take;

    private static SongWorkspace Open(string sheet) => SongWorkspace.Open(new SourceText(sheet, "up.lore"));

    private static byte[] TakeOf(string sheet)
    {
        using var scratch = new MemoryStream();
        using var wave = new MemoryStream();
        var mix = ((SoundResult.Ready)SongMixer.Prepare(Open(sheet).Song!, new SoundRequest())).Mix;
        SoundFile.Write(mix, scratch, wave, SoundFormat.Wave16, cancel: CancellationToken.None);
        return wave.ToArray();
    }
}
