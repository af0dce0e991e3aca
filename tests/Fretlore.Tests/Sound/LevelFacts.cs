using Fretlore.Sound.Loudness;
using Fretlore.Sound.Output;
using Fretlore.Sound.Pieces;

namespace Fretlore.Tests.Sound;

/// <summary>The level that a mix is set to, in steps.</summary>
public sealed class LevelFacts
{
    private const int Seconds = 23; // Three pieces, the last not whole.

    [Theory]
    [InlineData(0.001, 0.5)]
    [InlineData(0.03, 0.5)]
    [InlineData(0.4, 0.5)]
    [InlineData(0.05, 0.02)] // Short hits: the limiter takes several decibels.
    [InlineData(0.3, 0.05)]
    [InlineData(0.123, 0.2)]
    public void TheLoudness_ComesWithinATenthOfALoudnessUnit(double height, double shareOfABeat)
    {
        var (sound, loudness) = Levelled(height, shareOfABeat);
        Assert.InRange(loudness, -16 - Level.CloseEnough, -16 + Level.CloseEnough);
        var (meter, most) = (new LoudnessMeter(), 0.0);
        sound.Play((left, right) =>
        {
            meter.Hear(left, right);
            most = Math.Max(most, Math.Max(Math.Abs(left), Math.Abs(right)));
        });
        // What is measured piece by piece is what one meter measures, and the ceiling holds at the joins too.
        Assert.Equal(meter.Integrated()!.Value, loudness, 0.001);
        Assert.True(Heard.Decibels(most) <= -2.45, $"{Heard.Decibels(most)}");
    }

    [Fact]
    public void WhereTwoPiecesMeet_TheLimiterGoesOnAsIfItWereOne()
    {
        // A hit just before the join, which the limiter has not got over there.
        var (store, length) = (new FrameStore(new MemoryStream()), 12L * (long)Heard.Rate);
        var frames = new float[2 * length];
        for (var i = 0; i < length; i++)
        {
            var isHit = i > SoundPieces.Length - 4000 && i < SoundPieces.Length - 2000;
            frames[2 * i] = frames[2 * i + 1] = (float)((isHit ? 3 : 0.1) * Math.Sin(2 * Math.PI * 440 * i / Heard.Rate));
        }
        store.Write(0, frames);
        var (mix, factors) = (new StoredMix([store], length, false), store.After(length, 1));
        new LevelCurve(mix, factors, new PieceMemo(false), _ => "", TestContext.Current.CancellationToken).Set(Level.Like(0, SoundFormat.Opus));
        var (curve, limiter) = (new float[length], new PeakLimiter(Level.Like(0, SoundFormat.Opus).Ceiling));
        factors.Read(0, curve);
        for (var i = 0; i < length; i++)
        {
            limiter.Next(frames[2 * i], frames[2 * i + 1], Math.Abs(frames[2 * i]));
            if (i >= PeakLimiter.Delay) Assert.Equal(limiter.Gain, curve[i - PeakLimiter.Delay], 1e-6);
        }
        Assert.InRange(curve[SoundPieces.Length], 0, 0.95);
    }

    // A tone that comes and goes twice a second.
    private static (LevelledSound Sound, double Loudness) Levelled(double height, double share)
    {
        var (store, length) = (new FrameStore(new MemoryStream()), Seconds * (long)Heard.Rate);
        var frames = new float[2 * length];
        for (var i = 0; i < length; i++)
        {
            var at = i % 24000 / 24000.0;
            frames[2 * i] = frames[2 * i + 1] = (float)(height * (at < share ? 1 : 0.02) * Math.Sin(2 * Math.PI * 440 * i / Heard.Rate));
        }
        store.Write(0, frames);
        var (mix, factors) = (new StoredMix([store], length, false), store.After(length, 1));
        var (_, loudness) = new LevelCurve(mix, factors, new PieceMemo(false), _ => "", TestContext.Current.CancellationToken).Find(SoundFormat.Opus);
        return (new LevelledSound(mix, factors, TestContext.Current.CancellationToken), loudness!.Value);
    }
}
