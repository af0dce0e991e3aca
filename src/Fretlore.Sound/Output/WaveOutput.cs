using NAudio.Wave;

namespace Fretlore.Sound.Output;

/// <summary>Takes finished samples, one of each side at a time, and writes them as a file.</summary>
internal interface ISoundOutput : IDisposable
{
    void Write(double left, double right);
}

/// <summary>RIFF WAVE with whole numbers of 16 or 24 bits.</summary>
internal sealed class WaveOutput(Stream output, int bits) : ISoundOutput
{
    private readonly WaveFileWriter writer = new(output, new WaveFormat(SampleRate.Hertz, bits, 2));
    private readonly byte[] bytes = new byte[4096 * 2 * bits / 8];
    private readonly double full = 1 << (bits - 1);
    private int filled;

    public void Write(double left, double right)
    {
        Put(left);
        Put(right);
        if (filled == bytes.Length) Flush();
    }

    public void Dispose()
    {
        Flush();
        writer.Dispose();
    }

    private void Put(double value)
    {
        var whole = (int)Math.Clamp(Math.Round(value * full), -full, full - 1);
        for (var shift = 0; shift < bits; shift += 8) bytes[filled++] = unchecked((byte)(whole >> shift));
    }

    private void Flush()
    {
        writer.Write(bytes, 0, filled);
        filled = 0;
    }
}
