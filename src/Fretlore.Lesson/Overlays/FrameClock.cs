using System.Numerics;
using Fretlore.Music;

namespace Fretlore.Lesson.Overlays;

/// <summary>An exact fraction of seconds.</summary>
/// <param name="Numerator">Any whole number.</param>
/// <param name="Denominator">Above 0.</param>
internal readonly record struct ExactSeconds(BigInteger Numerator, BigInteger Denominator)
{
    public static ExactSeconds Zero => new(0, 1);

    public double ToDouble() => (double)Numerator / (double)Denominator;

    public static ExactSeconds operator +(ExactSeconds a, ExactSeconds b) => Of(a.Numerator * b.Denominator + b.Numerator * a.Denominator, a.Denominator * b.Denominator);

    public static ExactSeconds operator -(ExactSeconds a, ExactSeconds b) => Of(a.Numerator * b.Denominator - b.Numerator * a.Denominator, a.Denominator * b.Denominator);

    public static ExactSeconds Of(BigInteger numerator, BigInteger denominator)
    {
        var divisor = BigInteger.GreatestCommonDivisor(numerator, denominator);
        return divisor.IsZero ? Zero : new ExactSeconds(numerator / divisor, denominator / divisor);
    }
}

/// <summary>Musical time in film frames, without rounding: a frame is shown from its number divided by the rate on.</summary>
/// <remarks>The first frame is number 0. A moment belongs to the frame that is shown when it comes.</remarks>
internal sealed class FrameClock
{
    private readonly List<(Beats At, ExactSeconds Seconds, ExactSeconds OfQuarter)> changes = [];
    private readonly ExactSeconds before;

    /// <param name="tempos">Tempos in order of time; the first at zero.</param>
    /// <param name="percent">Of the tempo, above 0.</param>
    /// <param name="framesASecond">24, 25, 30 or 60.</param>
    /// <param name="before">Seconds before musical time begins, such as those of a count-in.</param>
    public FrameClock(IEnumerable<(Beats At, Tempo Tempo)> tempos, int percent, int framesASecond, Beats before)
    {
        FramesASecond = framesASecond;
        foreach (var (at, tempo) in tempos)
        {
            var start = changes.Count == 0 ? ExactSeconds.Zero : InMusic(at);
            if (changes.Count > 0 && changes[^1].At == at) changes.RemoveAt(changes.Count - 1);
            changes.Add((at, start, OfQuarter(tempo, percent)));
        }
        this.before = Times(changes[0].OfQuarter, before);
    }

    public int FramesASecond { get; }

    /// <summary>Seconds from the first frame to a place in musical time, which may be before its beginning.</summary>
    public ExactSeconds SecondsAt(Beats at) => InMusic(at) + before;

    /// <summary>The frame that is shown at a place in musical time.</summary>
    public long FrameAt(Beats at)
    {
        var seconds = SecondsAt(at);
        return (long)BigInteger.Divide(seconds.Numerator * FramesASecond - (seconds.Numerator < 0 ? seconds.Denominator - 1 : 0), seconds.Denominator);
    }

    /// <summary>How many frames it takes until a place in musical time has come.</summary>
    public long FramesTo(Beats at)
    {
        var seconds = SecondsAt(at);
        return (long)BigInteger.Divide(seconds.Numerator * FramesASecond + seconds.Denominator - 1, seconds.Denominator);
    }

    private ExactSeconds InMusic(Beats at)
    {
        var i = changes.Count - 1;
        while (i > 0 && changes[i].At > at) i--;
        return changes[i].Seconds + Times(changes[i].OfQuarter, at - changes[i].At);
    }

    // Seconds of a quarter: 60 / (beats a minute * quarters in a beat), at a share of the tempo.
    private static ExactSeconds OfQuarter(Tempo tempo, int percent)
    {
        var bits = decimal.GetBits(tempo.PerMinute);
        var scale = BigInteger.Pow(10, (bits[3] >> 16) & 0xFF);
        var whole = new BigInteger(tempo.PerMinute * (decimal)scale);
        var beat = tempo.Beat.Length;
        return ExactSeconds.Of(60 * scale * 100 * beat.Denominator, whole * percent * beat.Numerator);
    }

    private static ExactSeconds Times(ExactSeconds seconds, Beats quarters) =>
        ExactSeconds.Of(seconds.Numerator * quarters.Numerator, seconds.Denominator * quarters.Denominator);
}
