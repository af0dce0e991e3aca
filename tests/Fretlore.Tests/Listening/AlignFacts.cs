using Fretlore.Listening.Alignment;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Listening;

/// <summary>
/// Takes lined up with their sheets. The takes are ours, made by the string models at tempos that are known, so that errors can be measured; their notes
/// are found by partials that the models know nothing of. Score following counts a note as found within 250 ms (Cont, Schwarz, Schnell and Raphael,
/// "Evaluation of real-time audio-to-score alignment", ISMIR 2007); the means published for chroma onsets are 20 to 30 ms (Ewert, Müller and Grosche 2009).
/// </summary>
public class AlignFacts
{
    private static readonly Song Kestrel = DemoSongs.Load("kestrel-over-slate.lore");
    private static readonly Lazy<PlayedTake> Clean = new(() => PlayedTake.Of(Kestrel, 5, rig: "clean"));

    [Theory]
    [InlineData(1, "1", null)]
    [InlineData(2, "1", "clean")]
    [InlineData(3, "0.82", null)]
    [InlineData(4, "1.2", null, true)]
    public void BarsOfATakeWhoseTempoDrifts_AreFoundWithinAFewMilliseconds(int seed, string tempo, string? rig, bool countIn = false)
    {
        var take = PlayedTake.Of(Kestrel, seed, decimal.Parse(tempo, System.Globalization.CultureInfo.InvariantCulture), rig: rig, countIn: countIn);
        var errors = Errors(Align(Kestrel, take), take);
        Assert.Equal(take.BarStarts.Length, errors.Count);
        TestContext.Current.SendDiagnosticMessage("median {0:0.0} ms, of 20 the worst but one {1:0.0} ms, worst {2:0} ms", errors[errors.Count / 2], errors[errors.Count * 95 / 100], errors[^1]);
        Assert.InRange(errors[errors.Count / 2], 0, 6);
        Assert.InRange(errors[errors.Count * 95 / 100], 0, 40);
        Assert.InRange(errors[^1], 0, 250);
    }

    [Fact]
    public void AStopInTheMiddle_DoesNotMoveTheBarsAfterIt()
    {
        var take = Clean.Value.WithStopBefore(12, 1.5);
        var heard = Align(Kestrel, take);
        Assert.All(heard.Bars.Where(bar => bar.Index is < 10 or > 14), bar => Assert.Equal(take.BarStarts[bar.Index], bar.Seconds!.Value, 0.1));
    }

    [Fact]
    public void BarsBeforeATakeBegins_AreNotInIt()
    {
        var take = Clean.Value.From(Clean.Value.BarStarts[4] - 0.05);
        var heard = Align(Kestrel, take);
        Assert.All(heard.Bars.Where(bar => bar.Index < 3), bar => Assert.Null(bar.Seconds));
        Assert.All(heard.Bars.Where(bar => bar.Index > 8), bar => Assert.Equal(take.BarStarts[bar.Index], bar.Seconds!.Value, 0.1));
    }

    [Fact]
    public void AnotherSong_SoundsUnlikeTheSheet()
    {
        var other = DemoSongs.Load("lanterns-on-the-weir.lore");
        Assert.InRange(Align(Kestrel, Clean.Value).Unlike, 0, 0.6);
        Assert.InRange(Align(other, Clean.Value).Unlike, 0.7, 2);
    }

    [Fact]
    public void BarsAfterATakeEnds_AreNotInIt()
    {
        var take = Clean.Value.To(Clean.Value.BarStarts[30]);
        var heard = Align(Kestrel, take);
        Assert.All(heard.Bars.Where(bar => bar.Index > 31), bar => Assert.Null(bar.Seconds));
        Assert.All(heard.Bars.Where(bar => bar.Index < 27), bar => Assert.Equal(take.BarStarts[bar.Index], bar.Seconds!.Value, 0.1));
    }

    private static AlignedTake Align(Song song, PlayedTake take) => Assert.IsType<AlignedTake>(
        TakeAligner.Align(Performer.Play(song), [.. Enumerable.Range(0, song.Parts.Count)], take.Take, TestContext.Current.CancellationToken));

    // Milliseconds, in order.
    private static List<double> Errors(AlignedTake heard, PlayedTake take) =>
        [.. heard.Bars.Where(bar => bar.Seconds is not null).Select(bar => 1000 * Math.Abs(bar.Seconds!.Value - take.BarStarts[bar.Index])).Order()];
}
