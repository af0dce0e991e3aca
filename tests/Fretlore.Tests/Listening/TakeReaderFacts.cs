using Fretlore.Listening.Spectra;
using Fretlore.Listening.Takes;
using NAudio.Wave;

namespace Fretlore.Tests.Listening;

public class TakeReaderFacts
{
    [Theory]
    [InlineData(44100, 16, 2)]
    [InlineData(48000, 24, 1)]
    [InlineData(96000, 32, 2)]
    [InlineData(22050, 16, 1)]
    [InlineData(8000, 8, 6)]
    public void AToneInAnyKindOfWave_IsHeardAtItsPitchAndLength(int rate, int bits, int channels)
    {
        // A fifth of a semitone above A4.
        var hertz = 440 * Math.Pow(2, 20 / 1200.0);
        var take = Assert.IsType<TakeResult.Read>(Read(Tone(rate, bits, channels, hertz, 2))).Take;
        Assert.Equal(2, take.Seconds, 0.01);
        Assert.Equal(20, HeardMusic.TuningOf(take), 5.0);
    }

    [Fact]
    public void ASilentFile_IsRefused_SinceNothingCanBeFoundInIt() =>
        Assert.Contains("Nothing is heard", Assert.IsType<TakeResult.Refused>(Read(Tone(44100, 16, 1, 0, 2))).Message, StringComparison.Ordinal);

    [Fact]
    public void TheFile_StaysOpen()
    {
        using var file = new MemoryStream(Tone(44100, 16, 1, 440, 1.5));
        Assert.IsType<TakeResult.Read>(TakeReader.Read(file, TestContext.Current.CancellationToken));
        Assert.True(file.CanRead);
    }

    [Fact]
    public void WhatIsNoSound_IsRefusedWithARemedy()
    {
        var whole = Tone(44100, 16, 2, 440, 1.5);
        byte[][] files = [[], [1, 2, 3], "RIFF"u8.ToArray(), [.. "title Not a take\n"u8], whole[..30], [.. whole[..20], .. new byte[400]]];
        Assert.All(files, file => Assert.NotEmpty(Assert.IsType<TakeResult.Refused>(Read(file)).Remedy));
    }

    [Fact]
    public void ADamagedFile_IsReadOrRefused_ButNeverAnythingElse()
    {
        var whole = Tone(44100, 16, 2, 440, 1.2);
        var random = new Random(11);
        for (var n = 0; n < 200; n++)
        {
            var file = whole[..random.Next(4, whole.Length)];
            for (var hit = 0; hit < 6; hit++) file[random.Next(Math.Min(file.Length, 60))] = (byte)random.Next(256);
            Read(file);
        }
    }

    private static TakeResult Read(byte[] file) => TakeReader.Read(new MemoryStream(file), TestContext.Current.CancellationToken);

    // The top of the scale's fifth and octave besides, as a guitar has partials.
    private static byte[] Tone(int rate, int bits, int channels, double hertz, double seconds)
    {
        using var file = new MemoryStream();
        using (var writer = new WaveFileWriter(file, bits == 32 ? WaveFormat.CreateIeeeFloatWaveFormat(rate, channels) : new WaveFormat(rate, bits, channels)))
        {
            for (var i = 0; i < rate * seconds; i++)
            {
                var value = hertz == 0 ? 0 : (float)(0.3 * Math.Sin(2 * Math.PI * hertz * i / rate) + 0.15 * Math.Sin(4 * Math.PI * hertz * i / rate));
                for (var channel = 0; channel < channels; channel++) Write(writer, bits, value);
            }
        }
        return file.ToArray();
    }

    // Samples of 8 bits have no sign.
    private static void Write(WaveFileWriter writer, int bits, float value)
    {
        if (bits == 8) writer.WriteByte((byte)Math.Round(128 + 127 * value));
        else writer.WriteSample(value);
    }
}
