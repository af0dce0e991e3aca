using Fretlore.Listening.Takes;
using NAudio.Dsp;

namespace Fretlore.Listening.Spectra;

/// <summary>Spectra of a take around its moments.</summary>
/// <param name="take">The take.</param>
/// <param name="length">Samples that are looked at together, a power of two.</param>
internal sealed class Spectrum(Take take, int length)
{
    private readonly FftProcessor fft = new(length, FftWindowType.Hann);
    private readonly float[] samples = new float[length];
    private readonly Complex[] bins = new Complex[length / 2 + 1];

    /// <summary>Hertz from one bin to the next.</summary>
    public double HertzPerBin => Take.Hertz / (double)length;

    public int BinCount => bins.Length;

    /// <summary>The power in each bin around a time.</summary>
    /// <param name="middle">The sample in the middle; beyond the take's ends nothing sounds.</param>
    /// <param name="powers">Takes them; <see cref="BinCount"/> long.</param>
    public void At(long middle, Span<float> powers)
    {
        var all = take.Samples.Span;
        var from = middle - samples.Length / 2;
        var (first, end) = (Math.Clamp(from, 0, all.Length), Math.Clamp(from + samples.Length, 0, all.Length));
        Array.Clear(samples);
        if (end > first) all[(int)first..(int)end].CopyTo(samples.AsSpan((int)(first - from)));
        fft.RealForward(samples, bins);
        for (var i = 0; i < bins.Length; i++) powers[i] = bins[i].X * bins[i].X + bins[i].Y * bins[i].Y;
    }
}
