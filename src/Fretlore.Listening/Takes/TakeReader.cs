using NAudio.Wave;
using NAudio.Wave.SampleProviders;

namespace Fretlore.Listening.Takes;

/// <summary>Reads a sound file: WAV of any rate, any number of channels, 8 to 32 bits or floating point.</summary>
public static class TakeReader
{
    private const double ShortestSeconds = 1;
    private const double LongestSeconds = 30 * 60;
    private const int MostChannels = 32;
    private const int LowestRate = 8000;
    private const int HighestRate = 384_000;
    private const float Silence = 1e-4f; // 80 dB under full scale.

    /// <param name="file">Can be sought; left open.</param>
    /// <param name="cancel">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="IOException">The file can't be read.</exception>
    public static TakeResult Read(Stream file, CancellationToken cancel = default)
    {
        try
        {
            using var wave = new WaveFileReader(file);
            if (wave.WaveFormat.Channels > MostChannels) return Refuse($"The take has {wave.WaveFormat.Channels} channels.", $"Save it with {MostChannels} at most.");
            if (wave.WaveFormat.SampleRate is < LowestRate or > HighestRate) return Refuse($"The take has {wave.WaveFormat.SampleRate} samples a second.", "Save it with 44,100 or 48,000.");
            if (wave.TotalTime.TotalSeconds > LongestSeconds) return Refuse("The take is longer than half an hour.", "Cut the song out of it and save that.");
            var samples = Resampled(Mono(wave.ToSampleProvider()), cancel);
            if (samples.Length < ShortestSeconds * Take.Hertz) return Refuse("The take is shorter than a second.", "Record the song from its first bar to its last.");
            return samples.AsSpan().ContainsAnyExceptInRange(-Silence, Silence)
                ? new TakeResult.Read(new Take(samples))
                : Refuse("Nothing is heard in the take.", "Check that the right input was recorded.");
        }
        catch (Exception e) when (e is FormatException or InvalidDataException or EndOfStreamException or ArgumentException or NotSupportedException or InvalidOperationException or OverflowException)
        {
            return Refuse("The take is no sound file that can be read.", "Save it as WAV: uncompressed, 16, 24 or 32 bits.");
        }
    }

    private static TakeResult.Refused Refuse(string message, string remedy) => new(message, remedy);

    private static float[] Resampled(ISampleProvider sound, CancellationToken cancel)
    {
        var resampled = sound.WaveFormat.SampleRate == Take.Hertz ? sound : new WdlResamplingSampleProvider(sound, Take.Hertz);
        var samples = new List<float>();
        var block = new float[Take.Hertz];
        for (var read = resampled.Read(block); read > 0; read = resampled.Read(block))
        {
            cancel.ThrowIfCancellationRequested();
            // A file may hold values that are no numbers: nothing is heard there.
            foreach (var sample in block.AsSpan(0, read)) samples.Add(float.IsFinite(sample) ? Math.Clamp(sample, -16, 16) : 0);
        }
        return [.. samples];
    }

    private static ISampleProvider Mono(ISampleProvider sound) => sound.WaveFormat.Channels == 1 ? sound : new MeanOfChannels(sound);

    private sealed class MeanOfChannels(ISampleProvider sound) : ISampleProvider
    {
        private readonly int channels = sound.WaveFormat.Channels;
        private float[] frames = [];

        public WaveFormat WaveFormat { get; } = WaveFormat.CreateIeeeFloatWaveFormat(sound.WaveFormat.SampleRate, 1);

        public int Read(Span<float> buffer)
        {
            if (frames.Length < buffer.Length * channels) frames = new float[buffer.Length * channels];
            var read = sound.Read(frames.AsSpan(0, buffer.Length * channels)) / channels;
            for (var i = 0; i < read; i++)
            {
                var sum = 0f;
                for (var channel = 0; channel < channels; channel++) sum += frames[i * channels + channel];
                buffer[i] = sum / channels;
            }
            return read;
        }
    }
}
