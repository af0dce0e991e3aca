using Concentus;
using Concentus.Enums;
using Fretlore.Sound.Mixing;

namespace Fretlore.Sound.Output;

/// <summary>Opus in Ogg (RFC 7845), which browsers play: about a tenth of the size of a WAV file.</summary>
internal sealed class OpusOutput : IDisposable
{
    public const int UsualBitsASecond = 128_000;

    /// <summary>Samples a decoder hears before the first one that counts, so that it has settled: the standard's 80 ms.</summary>
    public const int RunUp = 4 * FrameLength;

    private const int FrameLength = SampleRate.Hertz / 50;
    private const int LongestPacket = 4000;
    private const int PacketsAPage = 50;

    private readonly OggPages pages;
    private readonly IOpusEncoder encoder;
    private readonly float[] frame = new float[2 * FrameLength];
    private readonly byte[] packet = new byte[LongestPacket];
    private readonly int skip;
    private long heard;
    private long encoded;
    private int filled;
    private int packed;

    public OpusOutput(Stream output, SongMix mix, int bitsASecond)
    {
        // Only the codec in C# gives the same bytes everywhere.
        OpusCodecFactory.AttemptToUseNativeLibrary = false;
        encoder = OpusCodecFactory.CreateEncoder(SampleRate.Hertz, 2, OpusApplication.OPUS_APPLICATION_AUDIO);
        encoder.Bitrate = bitsASecond;
        // A loop begins as it will when it has come round: its end runs up to it.
        skip = encoder.Lookahead + (mix.IsLoop ? RunUp : 0);
        pages = new OggPages(output);
        pages.Add(OpusHeaders.Head(skip), 0);
        pages.Flush();
        pages.Add(OpusHeaders.Tags(mix), 0);
        pages.Flush();
    }

    public void Write(double left, double right)
    {
        heard++;
        Put(left, right);
    }

    /// <summary>Takes what is before the first sample and is not heard: <see cref="RunUp"/> samples of a loop.</summary>
    public void WriteBefore(double left, double right) => Put(left, right);

    /// <summary>Takes what comes after the last sample and is not heard, as far as the encoder looks ahead.</summary>
    public void WriteAfter(double left, double right)
    {
        if (encoded < heard + skip) Put(left, right);
    }

    public void Dispose()
    {
        // The encoder is late by what it skips: silence pushes the end out.
        while (encoded < heard + skip) Put(0, 0);
        pages.Flush(isLast: true);
        encoder.Dispose();
    }

    private void Put(double left, double right)
    {
        frame[filled++] = (float)left;
        frame[filled++] = (float)right;
        if (filled < frame.Length) return;
        filled = 0;
        var length = encoder.Encode(frame, FrameLength, packet, packet.Length);
        encoded += FrameLength;
        if (packed == PacketsAPage)
        {
            pages.Flush();
            packed = 0;
        }
        packed++;
        pages.Add(packet.AsSpan(0, length), Math.Min(encoded, heard + skip));
    }
}
