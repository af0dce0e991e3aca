using Fretlore.Sound.Loudness;

namespace Fretlore.Tests.Sound;

/// <summary>The limiter and the meter on signals whose values are known.</summary>
public sealed class LimiterFacts
{
    [Fact]
    public void ALoudMoment_IsTurnedDownBelowTheCeiling_AndSoftOnesAreLeftAlone()
    {
        var limiter = new PeakLimiter(0.89);
        var most = 0.0;
        for (var i = 0; i < 48000; i++)
        {
            var loud = i is > 12000 and < 24000;
            var value = (loud ? 3 : 0.4) * Math.Sin(2 * Math.PI * 997 * i / Heard.Rate);
            var (left, right) = limiter.Next(value, -0.5 * value);
            most = Math.Max(most, Math.Abs(left));
            Assert.Equal(-0.5 * left, right, 12);
            if (i is > 200 and < 11000 or > 47000)
                Assert.Equal(0.4 * Math.Sin(2 * Math.PI * 997 * (i - PeakLimiter.Delay) / Heard.Rate), left, 0.01);
        }
        Assert.InRange(most, 0.8, 0.89);
    }

    [Fact]
    public void APeakBetweenSamples_IsSeen()
    {
        // A quarter of the sample rate, halfway between samples: they reach 0.707 of the wave (ITU-R BS.1770-4, annex 2).
        var limiter = new PeakLimiter(0.8);
        var most = 0.0;
        for (var i = 0; i < 9600; i++) most = Math.Max(most, Math.Abs(limiter.Next(Math.Sin(Math.PI / 2 * i + Math.PI / 4), 0).Left));
        Assert.InRange(most / Math.Sqrt(0.5), 0.77, 0.805);
    }

    [Theory]
    [InlineData(-23, -23.0)]
    [InlineData(-33, -33.0)]
    public void AStereoToneOfOneKilohertz_MeasuresItsLevel(double decibels, double lufs)
    {
        // EBU Tech 3341, test cases 1 and 2: 20 s of 1 kHz in both channels at this peak level.
        var meter = new LoudnessMeter();
        for (var i = 0; i < 20 * 48000; i++)
        {
            var value = Math.Pow(10, decibels / 20) * Math.Sin(2 * Math.PI * 1000 * i / Heard.Rate);
            meter.Hear(value, value);
        }
        Assert.InRange(meter.Integrated()!.Value, lufs - 0.1, lufs + 0.1);
    }

    [Fact]
    public void SoftPassages_AreLeftOutByTheGate()
    {
        // EBU Tech 3341, test case 3: 10 s at -36, 60 s at -23, 10 s at -36 measure -23.
        var meter = new LoudnessMeter();
        for (var i = 0; i < 80 * 48000; i++)
        {
            var level = i / 48000 is >= 10 and < 70 ? -23.0 : -36.0;
            var value = Math.Pow(10, level / 20) * Math.Sin(2 * Math.PI * 1000 * i / Heard.Rate);
            meter.Hear(value, value);
        }
        Assert.InRange(meter.Integrated()!.Value, -23.1, -22.9);
    }

    [Fact]
    public void Silence_HasNoLoudness()
    {
        var meter = new LoudnessMeter();
        for (var i = 0; i < 48000; i++) meter.Hear(0, 0);
        Assert.Null(meter.Integrated());
    }
}
