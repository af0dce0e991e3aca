using Fretlore.Sound.Mixing;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Output;

/// <summary>What was written.</summary>
/// <param name="Seconds">Its length.</param>
/// <param name="Loudness">Integrated, in LUFS; null for silence.</param>
/// <param name="Steps">What everything in it was turned up by, in steps of 0.2 dB.</param>
public readonly record struct WrittenSound(double Seconds, double? Loudness, int Steps);

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

    /// <summary>Renders the mix and writes it.</summary>
    /// <param name="mix">The mix; rendered once.</param>
    /// <param name="scratch">An empty stream that can be written, read and sought.</param>
    /// <param name="output">An empty stream that can be sought; left open.</param>
    /// <param name="format">The kind of file.</param>
    /// <param name="bitsASecond">What Opus may take; null for 128,000. WAV files take what they take.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="IOException">A stream can't be written.</exception>
    public static WrittenSound Write(
        SongMix mix, Stream scratch, Stream output, SoundFormat format, int? bitsASecond = null, Action<double>? progress = null, CancellationToken cancel = default)
    {
        var store = new FrameStore(scratch);
        Render(mix, store, progress, cancel);
        var stored = new StoredMix([store], mix.Length, mix.IsLoop);
        var factors = store.After(mix.Rendered, 1);
        var (level, loudness) = new LevelCurve(stored, factors, new PieceMemo(false), _ => "", cancel).Find(format);
        progress?.Invoke(0.9);
        Encode(new LevelledSound(stored, factors, cancel), mix, output, format, bitsASecond);
        progress?.Invoke(1);
        return new WrittenSound(mix.Seconds, loudness, level.Steps);
    }

    /// <summary>Writes what is set to its level already.</summary>
    internal static void Encode(LevelledSound sound, SongMix mix, Stream output, SoundFormat format, int? bitsASecond)
    {
        if (format != SoundFormat.Opus)
        {
            using var wave = new WaveOutput(output, format == SoundFormat.Wave24 ? 24 : 16, mix);
            sound.Play(wave.Write);
            return;
        }
        // A loop begins as it will when it has come round: its end runs up to it, and its start comes after it.
        var runUp = mix.IsLoop ? OpusOutput.UsualRunUp : 0;
        using var opus = new OpusOutput(output, OpusHeaders.Tags(mix), 2, bitsASecond ?? OpusOutput.UsualBitsASecond, runUp);
        sound.Play(mix.Length - runUp, runUp, opus.WriteBefore);
        sound.Play(opus.Write);
        sound.Play(0, runUp, opus.WriteAfter);
    }

    /// <summary>Renders a mix, all tracks together.</summary>
    internal static void Render(SongMix mix, FrameStore store, Action<double>? progress, CancellationToken cancel)
    {
        long done = 0;
        mix.Render((left, right) =>
        {
            store.Write(done, left.Span, right.Span);
            done += left.Length;
            progress?.Invoke(0.85 * done / mix.Rendered);
        }, cancel: cancel);
        if (mix.IsLoop) store.CloseLoop(mix.Length, mix.Seam);
    }
}
