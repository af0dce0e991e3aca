using Fretlore.Listening.Spectra;
using Fretlore.Listening.Takes;

namespace Fretlore.Listening.Alignment;

/// <summary>When strings are struck in a take, to a few milliseconds: where many partials grow at once.</summary>
internal sealed class Attacks
{
    private const int Window = 512;
    private const int Hop = 110; // 5 ms
    private const float Compression = 1e4f;

    // Seconds by which the peak comes after the pick lets go of the string; measured on struck strings of known time.
    private const double Late = 0.0015;

    private readonly float[] growth;

    public Attacks(Take take, CancellationToken cancel)
    {
        var spectrum = new Spectrum(take, Window);
        var (now, before) = (new float[spectrum.BinCount], new float[spectrum.BinCount]);
        growth = new float[take.Samples.Length / Hop + 1];
        for (var f = 0; f < growth.Length; f++)
        {
            cancel.ThrowIfCancellationRequested();
            spectrum.At((long)f * Hop, now);
            for (var bin = 0; bin < now.Length; bin++)
            {
                now[bin] = MathF.Log(1 + Compression * now[bin]);
                growth[f] += Math.Max(0, now[bin] - before[bin]);
            }
            (now, before) = (before, now);
        }
    }

    /// <summary>The clearest attack near a time, in seconds; null where none stands out.</summary>
    /// <param name="seconds">Where it is looked for.</param>
    /// <param name="reach">How far it may be from there.</param>
    public double? Near(double seconds, double reach)
    {
        var (first, last) = (Moment(seconds - 2 * reach), Moment(seconds + 2 * reach));
        if (last - first < 4) return null;
        var mean = 0f;
        for (var f = first; f <= last; f++) mean += growth[f] / (last - first + 1);
        var (best, clearest) = (-1, 0.0);
        for (var f = Math.Max(first, Moment(seconds - reach)); f <= Math.Min(last, Moment(seconds + reach)); f++)
        {
            var nearness = 1 - 0.5 * Math.Abs(f * Hop / (double)Take.Hertz - seconds) / reach;
            if (growth[f] * nearness <= clearest) continue;
            (best, clearest) = (f, growth[f] * nearness);
        }
        if (best <= 0 || best >= growth.Length - 1 || growth[best] < 2 * mean) return null;
        // The top of the parabola through the peak and its neighbours.
        var (a, b, c) = (growth[best - 1], growth[best], growth[best + 1]);
        var bend = a - 2 * b + c;
        var off = bend < 0 ? Math.Clamp(0.5 * (a - c) / bend, -0.5, 0.5) : 0;
        return (best + off) * Hop / Take.Hertz - Late;
    }

    private int Moment(double seconds) => (int)Math.Clamp(seconds * Take.Hertz / Hop, 0, growth.Length - 1);
}
