using System.Runtime.CompilerServices;

namespace Fretlore.Sound.Loudness;

/// <summary>Turns down for moments that would be too loud, a little before they come, both sides alike.</summary>
/// <remarks>
/// Peaks are looked for between samples too (true peak, ITU-R BS.1770-4 annex 2: four times oversampled; the interpolator is our own
/// windowed sinc). The gain is the least that any sample within 2 ms asks for, smoothed over 2 ms.
/// </remarks>
internal sealed class PeakLimiter
{
    private const int Window = 96;
    private const int Taps = 16;
    private const int Centre = Taps / 2 - 1;
    private const double ReleaseSeconds = 0.12;

    /// <summary>Samples between what goes in and what comes out.</summary>
    public const int Delay = Window - 1 + Taps / 2;

    private static readonly double[][] Between = [.. Enumerable.Range(1, 3).Select(Phase)];

    private readonly double ceiling;
    private readonly double recovery = 1 - Math.Exp(-1 / (ReleaseSeconds * SampleRate.Hertz));
    private readonly double[] left = new double[256];
    private readonly double[] right = new double[256];
    private readonly double[] smooth = new double[Window];
    private readonly LinkedList<(long At, double Gain)> candidates = new();
    private double envelope = 1;
    private double sum = Window;
    private long now;
    private int loudFor;

    public PeakLimiter(double ceiling)
    {
        this.ceiling = ceiling;
        Array.Fill(smooth, 1);
    }

    /// <summary>The gain of the last sample that was given, 0 to 1.</summary>
    public double Gain { get; private set; } = 1;

    /// <summary>Takes one sample of each side and gives the one from <see cref="Delay"/> samples ago.</summary>
    /// <param name="highest">The highest sample among the tracks that make up the mix: where they cancel each other, one alone may be higher than all together.</param>
    public (double Left, double Right) Next(double leftValue, double rightValue, double highest = 0)
    {
        Gain = GainAfter(leftValue, rightValue, highest);
        var old = (int)((now - 1 - Delay) & 255);
        return (left[old] * Gain, right[old] * Gain);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double GainAfter(double leftValue, double rightValue, double highest)
    {
        var at = (int)(now & 255);
        (left[at], right[at]) = (leftValue, rightValue);
        // Between samples a wave seldom rises to twice their height; soft passages need no closer look.
        if (Math.Max(Math.Abs(leftValue), Math.Abs(rightValue)) > ceiling * 0.5) loudFor = Taps;
        var wanted = 1.0;
        if (loudFor > 0)
        {
            loudFor--;
            var peak = Math.Max(PeakOf(left), PeakOf(right));
            if (peak > ceiling) wanted = ceiling / peak;
        }
        if (highest > ceiling) wanted = Math.Min(wanted, ceiling / highest);
        envelope = Math.Min(LeastOf(wanted), envelope + (1 - envelope) * recovery);
        var slot = (int)(now % Window);
        sum += envelope - smooth[slot];
        smooth[slot] = envelope;
        now++;
        return Math.Min(1, sum / Window);
    }

    // The smallest of the last samples' gains, kept as a falling list.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double LeastOf(double wanted)
    {
        if (candidates.Count == 0 && wanted >= 1) return 1;
        while (candidates.Last is { } last && last.Value.Gain >= wanted) candidates.RemoveLast();
        if (wanted < 1) candidates.AddLast((now, wanted));
        while (candidates.First is { } first && first.Value.At <= now - Window) candidates.RemoveFirst();
        return candidates.First?.Value.Gain ?? 1;
    }

    // The highest of the sample in the middle of the taps and the three points after it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double PeakOf(double[] side)
    {
        var peak = Math.Abs(side[(int)((now - Taps / 2) & 255)]);
        foreach (var phase in Between)
        {
            double value = 0;
            for (var tap = 0; tap < Taps; tap++) value += phase[tap] * side[(int)((now - Taps + 1 + tap) & 255)];
            peak = Math.Max(peak, Math.Abs(value));
        }
        return peak;
    }

    private static double[] Phase(int quarter)
    {
        var taps = new double[Taps];
        for (var tap = 0; tap < Taps; tap++)
        {
            var x = tap - Centre - quarter / 4.0;
            var window = 0.5 + 0.5 * Math.Cos(Math.PI * x / (Taps / 2.0));
            taps[tap] = Math.Sin(Math.PI * x) / (Math.PI * x) * window;
        }
        return taps;
    }
}
