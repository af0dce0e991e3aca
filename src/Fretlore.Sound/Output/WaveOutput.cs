using System.Buffers.Binary;
using Fretlore.Sound.Mixing;
using NAudio.Wave;

namespace Fretlore.Sound.Output;

/// <summary>RIFF WAVE with whole numbers of 16 or 24 bits, and with its title and sections in the chunks players look for.</summary>
internal sealed class WaveOutput : IDisposable
{
    private readonly WaveFileWriter writer;
    private readonly int bits;
    private readonly byte[] bytes;
    private readonly double full;
    private int filled;

    public WaveOutput(Stream output, int bits, SongMix mix)
    {
        this.bits = bits;
        writer = new WaveFileWriter(output, new WaveFormat(SampleRate.Hertz, bits, 2));
        bytes = new byte[4096 * 2 * bits / 8];
        full = 1 << (bits - 1);
        foreach (var mark in mix.Marks) writer.AddCue((int)mark.Sample, mark.Name);
        if (mix.IsLoop) writer.AddChunk("smpl", LoopChunk(mix.Length), ChunkPosition.AfterData);
        var about = new InfoMetadata();
        about.Set("INAM", mix.Info.Title);
        about.Set("IART", mix.Info.Artist ?? "");
        about.Set("ICOP", mix.Info.Rights ?? "");
        about.Set("ISFT", "Fretlore");
        writer.WriteInfoMetadata(about, ChunkPosition.AfterData);
    }

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

    // The sampler chunk of the Multimedia Data Standards Update (1994): one loop, from the first sample to the last, without end.
    private static byte[] LoopChunk(long length)
    {
        int[] numbers = [0, 0, 1_000_000_000 / SampleRate.Hertz, 60, 0, 0, 0, 1, 0, 0, 0, 0, (int)length - 1, 0, 0];
        var chunk = new byte[sizeof(int) * numbers.Length];
        for (var i = 0; i < numbers.Length; i++) BinaryPrimitives.WriteInt32LittleEndian(chunk.AsSpan(sizeof(int) * i), numbers[i]);
        return chunk;
    }

    private void Flush()
    {
        writer.Write(bytes, 0, filled);
        filled = 0;
    }
}
