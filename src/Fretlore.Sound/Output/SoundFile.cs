using System.Runtime.InteropServices;
using Fretlore.Sound.Loudness;
using Fretlore.Sound.Mixing;

namespace Fretlore.Sound.Output;

/// <summary>What was written.</summary>
/// <param name="Seconds">Its length.</param>
/// <param name="Loudness">Integrated, in LUFS; null for silence.</param>
public readonly record struct WrittenSound(double Seconds, double? Loudness);

/// <summary>Kinds of sound file.</summary>
public enum SoundFormat
{
    /// <summary>RIFF WAVE, 16 bits.</summary>
    Wave16,

    /// <summary>RIFF WAVE, 24 bits.</summary>
    Wave24,

    /// <summary>Opus in Ogg.</summary>
    Opus,
}

/// <summary>Writes a mix as a sound file at a fixed loudness.</summary>
/// <remarks>Memory does not grow with the song: the mix is kept in a scratch stream until its loudness is known.</remarks>
public static class SoundFile
{
    /// <summary>Integrated loudness of everything written, in LUFS.</summary>
    public const double Loudness = -16;

    /// <summary>The highest true peak, in decibels under full scale.</summary>
    public const double TruePeak = -1;

    private const int FrameBytes = 2 * sizeof(float);
    private const double MostGain = 60; // dB

    /// <summary>Renders the mix and writes it.</summary>
    /// <param name="mix">The mix; rendered once.</param>
    /// <param name="scratch">An empty stream that can be written, read and sought.</param>
    /// <param name="output">An empty stream that can be sought; left open.</param>
    /// <param name="format">The kind of file.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="IOException">A stream can't be written.</exception>
    public static WrittenSound Write(
        SongMix mix, Stream scratch, Stream output, SoundFormat format, Action<double>? progress = null, CancellationToken cancel = default)
    {
        // A margin for what rounding and smoothing add, and more where the codec draws the wave anew.
        var ceiling = FromDecibels(TruePeak - (format == SoundFormat.Opus ? 1.5 : 0.2));
        var raw = Render(mix, scratch, progress, cancel);
        var (gain, loudness) = FindGain(scratch, raw, ceiling, cancel);
        progress?.Invoke(0.9);
        using (ISoundOutput file = format == SoundFormat.Opus ? new OpusOutput(output, mix.Info) : new WaveOutput(output, format == SoundFormat.Wave24 ? 24 : 16))
        {
            ForEach(scratch, gain, ceiling, file.Write, cancel);
        }
        progress?.Invoke(1);
        return new WrittenSound(mix.Seconds, loudness);
    }

    private static double? Render(SongMix mix, Stream scratch, Action<double>? progress, CancellationToken cancel)
    {
        var meter = new LoudnessMeter();
        var frames = new float[2 * SongMix.BlockLength];
        long done = 0;
        mix.Render((left, right) =>
        {
            var l = left.Span;
            var r = right.Span;
            for (var i = 0; i < l.Length; i++)
            {
                meter.Hear(l[i], r[i]);
                frames[2 * i] = (float)l[i];
                frames[2 * i + 1] = (float)r[i];
            }
            scratch.Write(MemoryMarshal.AsBytes(frames.AsSpan(0, 2 * l.Length)));
            done += l.Length;
            progress?.Invoke(0.85 * done / mix.Length);
        }, cancel: cancel);
        return meter.Integrated();
    }

    // The limiter takes a little loudness away, so the gain is tried and mended.
    private static (double Gain, double? Loudness) FindGain(Stream scratch, double? raw, double ceiling, CancellationToken cancel)
    {
        if (raw is not { } measured) return (1, null);
        var decibels = Math.Min(Loudness - measured, MostGain);
        for (var attempt = 0; ; attempt++)
        {
            var meter = new LoudnessMeter();
            ForEach(scratch, FromDecibels(decibels), ceiling, meter.Hear, cancel);
            var reached = meter.Integrated() ?? Loudness;
            if (Math.Abs(Loudness - reached) < 0.1 || attempt == 5) return (FromDecibels(decibels), reached);
            decibels = Math.Min(decibels + Loudness - reached, MostGain);
        }
    }

    private static void ForEach(Stream scratch, double gain, double ceiling, Action<double, double> hear, CancellationToken cancel)
    {
        var limiter = new PeakLimiter(ceiling);
        scratch.Position = 0;
        var bytes = new byte[SongMix.BlockLength * FrameBytes];
        long taken = 0;
        for (int read; (read = scratch.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false)) > 0;)
        {
            cancel.ThrowIfCancellationRequested();
            var frames = MemoryMarshal.Cast<byte, float>(bytes.AsSpan(0, read));
            for (var i = 0; i + 1 < frames.Length; i += 2) Pass(frames[i] * gain, frames[i + 1] * gain);
        }
        for (var i = 0; i < PeakLimiter.Delay; i++) Pass(0, 0);

        void Pass(double left, double right)
        {
            var (l, r) = limiter.Next(left, right);
            if (taken++ >= PeakLimiter.Delay) hear(l, r);
        }
    }

    private static double FromDecibels(double decibels) => Math.Pow(10, decibels / 20);
}
