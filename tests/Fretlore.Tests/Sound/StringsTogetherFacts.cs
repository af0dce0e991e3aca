using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Sound;

/// <summary>What is heard of strings besides the note that is played: others that ring along, pedals, pinched harmonics.</summary>
public sealed class StringsTogetherFacts
{
    [Fact]
    public void OnAnAcoustic_AnOpenStringRingsAlong_WithTheOctaveThatIsPlayed()
    {
        // E3 on the fifth string, cut short: the open sixth string has it as its second partial.
        var left = Mix("acoustic", "@5 Q 7 R H R");
        var (during, after) = (Heard.LevelAt(left, 0.1, 0.3, 164.81), Heard.LevelAt(left, 1.3, 0.5, 164.81));
        TestContext.Current.SendDiagnosticMessage("rings along {0:0.0} dB under the note", Heard.Decibels(after / during));
        Assert.InRange(Heard.Decibels(after / during), -50, -25);
        // A semitone beside it no string has a partial.
        var beside = Mix("acoustic", "@5 Q 8 R H R");
        Assert.True(Heard.LevelAt(beside, 1.3, 0.5, 174.61) < after / 10);
    }

    [Theory]
    [InlineData("driven", "@5 Q 7 R H R")] // The hands keep other strings still.
    [InlineData("acoustic", "@5 Q 7m R H R")] // The muting hand lies on all of them.
    public void WhereHandsMute_NothingRingsAlong(string sound, string music)
    {
        var (muted, free) = (Mix(sound, music), Mix("acoustic", "@5 Q 7 R H R"));
        Assert.True(Heard.LevelAt(muted, 1.3, 0.5, 164.81) / Heard.LevelAt(muted, 0.02, 0.2, 164.81) < 0.3 * Heard.LevelAt(free, 1.3, 0.5, 164.81) / Heard.LevelAt(free, 0.02, 0.2, 164.81));
    }

    [Fact]
    public void NineStringsTunedAlike_RingAlongAndDieAway()
    {
        // All of them have every partial in common: nothing may go round and grow.
        var left = Heard.Mix(Sheets.Song(
            "title T\ntuning E3 E3 E3 E3 E3 E3 E3 E3 E3\ntempo Q = 60\npart solo \"Solo\" sound acoustic\nsection A\n  solo @1 Q 0 R H R | rest 4\n")).Left;
        double Level(double at) => Heard.Rms(left, at, at + 1);
        Assert.True(Level(2) < Level(0) / 10 && Level(2) > 0 && Level(18) < Level(2) / 20, $"{Level(0)} {Level(2)} {Level(18)}");
    }

    [Fact]
    public void AnOpenStringThatRangAlong_IsInTuneWhenItIsPlayed()
    {
        var left = Mix("acoustic", "@5 Q 7 7 @6 H 0");
        Assert.InRange(Heard.Cents(Heard.Frequency(left, 1.2, 0.3, 82.407), 82.407), -2, 2);
    }

    [Fact]
    public void APinchedHarmonic_SoundsHigh_InTuneWithAPartialOfItsNote()
    {
        var sound = Heard.String(Sheets.Line("@4 W 5*p"), 4, 1);
        var stopped = new Height(55).Hertz();
        var strongest = Enumerable.Range(1, 12).MaxBy(n => Heard.LevelAt(sound, 0.2, 0.2, n * stopped));
        Assert.InRange(strongest, 3, 8);
        Assert.InRange(Heard.Cents(Heard.Frequency(sound, 0.2, 0.2, strongest * stopped), strongest * stopped), -2, 2);
        Assert.True(Heard.LevelAt(sound, 0.2, 0.2, stopped) < Heard.LevelAt(sound, 0.2, 0.2, strongest * stopped) / 10);
    }

    [Fact]
    public void AWahPedal_IsClosedOnTheBeatAndOpenAfterIt()
    {
        var (plain, pedal) = (Mix("clean", "@6 Q 0 R 0 R"), Mix("clean", "@6 wah{ Q 0 R 0 R }"));
        double High(double[] s, double at) => Heard.LevelAt(s, at, 0.06, 17 * 82.407) / Heard.LevelAt(plain, at, 0.06, 17 * 82.407);
        double Low(double[] s, double at) => Heard.LevelAt(s, at, 0.06, 5 * 82.407) / Heard.LevelAt(plain, at, 0.06, 5 * 82.407);
        // Half a second a beat: from a quarter of it on the peak has gone up.
        Assert.True(Low(pedal, 0.02) > 2 * High(pedal, 0.02), $"{Low(pedal, 0.02)} {High(pedal, 0.02)}");
        Assert.True(High(pedal, 0.22) > 2 * Low(pedal, 0.22), $"{High(pedal, 0.22)} {Low(pedal, 0.22)}");
        Assert.Equal(plain.Take(1000).Max() > 0, pedal.Take(1000).Max() > 0);
    }

    [Fact]
    public void EachTimeANoteIsPlayed_ItDiffersALittle_AndNotAtAllWhenPlayedExactly()
    {
        var song = Sheets.Line("times 2{ @6 H 0 R | }");
        song = song with { Parts = [song.Parts[0] with { Sound = "driven" }] };
        double Differ(bool exact)
        {
            var (left, _) = Heard.Mix(song, new SoundRequest { Exact = exact });
            return left[..48000].Zip(left[96000..144000], (a, b) => Math.Abs(a - b)).Max() / left.Max(Math.Abs);
        }
        Assert.InRange(Differ(exact: false), 0.01, 2);
        Assert.True(Differ(exact: true) < 0.002);
    }

    private static double[] Mix(string sound, string music)
    {
        Song song = Sheets.Line(music);
        return Heard.Mix(song with { Parts = [song.Parts[0] with { Sound = sound }] }, new SoundRequest { Exact = true }).Left;
    }
}
