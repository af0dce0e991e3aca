using Fretlore.Sound.Mixing;
using Fretlore.Sound.Rigs;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>Songs that ask a lot.</summary>
public sealed class HardInputFacts
{
    public static TheoryData<string> Rigs => [.. RigNames.All];

    [Theory]
    [InlineData("Q = 0")]
    [InlineData("Q = -5")]
    public void NoTempo_IsFoundInTheSheet(string tempo) =>
        Assert.True(Sheets.Read($"title T\ntuning E2 A2 D3 G3 B3 E4\ntempo {tempo}\nsection A\n  @6 W 0\n").HasErrors);

    [Fact]
    public void TwoHundredAndSeventyNotesAtOnce_StayFinite_AndEveryPartIsHeard()
    {
        const int parts = 30;
        var sheet = "title Crowd\ntuning B0 E1 A1 D2 G2 C3 F3 A3 D4\ntempo Q = 240\n"
            + string.Concat(Enumerable.Range(1, parts).Select(i => $"part voice{i} \"Voice {i}\" sound {RigNames.All[i % RigNames.All.Length]}\n"))
            + "section A\n"
            + string.Concat(Enumerable.Range(1, parts).Select(i => $"  voice{i}  @9-1 Q [0 0 0 0 0 0 0 0 0] R H R |\n"));
        var (left, right) = Heard.Mix(Sheets.Song(sheet));
        Assert.True(left.Concat(right).All(double.IsFinite));
        Assert.InRange(left.Max(Math.Abs), 0.5, 500);
    }

    [Fact]
    public void AThousandBeatsAMinute_AtThreeTimesTheSpeed_KeepTheirOrder()
    {
        // 64ths at 3,000 beats a minute: one and a quarter milliseconds each.
        var song = Sheets.Song("title T\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 1000\nsection A\n  @1 Z:3/2 " + string.Concat(Enumerable.Repeat("5 8 12 ", 32)) + "|\n");
        var (left, _) = Heard.Mix(song, new SoundRequest { Speed = 3 });
        Assert.True(left.All(double.IsFinite) && left.Max(Math.Abs) is > 0.001 and < 20);
    }

    [Theory]
    [MemberData(nameof(Rigs))]
    public void ThroughAnyRig_ANoteBeginsWithinAMillisecondOfItsTime(string rig)
    {
        var song = Sheets.Line("@4 H R 5!");
        song = song with { Parts = [song.Parts[0] with { Sound = rig }] };
        var (left, right) = Heard.Mix(song, new SoundRequest { Exact = true });
        var most = left.Max(Math.Abs);
        Assert.True(left[..48000].Concat(right[..48000]).Max(Math.Abs) < 1e-6 * most);
        Assert.True(left[48000..48048].Max(Math.Abs) > 0.02 * most, $"{left[48000..48048].Max(Math.Abs) / most:0.0000}");
    }

    [Fact]
    public void HoursOfMusic_AreRefused_BeforeAnythingIsRendered()
    {
        var refused = Assert.IsType<SoundResult.Refused>(SongMixer.Prepare(
            Sheets.Song("title T\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 5\nsection A\n  times 300{ @6 W 0 | }\n"), new SoundRequest()));
        Assert.Contains("4.0 hours", refused.Message, StringComparison.Ordinal);
    }
}
