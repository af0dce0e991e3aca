using Concentus;
using Concentus.Enums;

namespace Fretlore.Sound.Output;

/// <summary>Opus in Ogg (RFC 7845), which browsers play: about a tenth of the size of a WAV file.</summary>
internal sealed class OpusOutput : IDisposable
{
    public const int UsualBitsASecond = 128_000;

    /// <summary>Samples a decoder needs to hear before the first one that counts, so that it has settled: the standard's 80 ms.</summary>
    public const int UsualRunUp = 4 * FrameLength;

    private const int FrameLength = SampleRate.Hertz / 50;
    private const int LongestPacket = 4000;
    private const int PacketsAPage = 50;

    private readonly OggPages pages;
    private readonly IOpusEncoder encoder;
    private readonly int channels;
    private readonly float[] frame;
    private readonly byte[] packet = new byte[LongestPacket];
    private readonly int skip;
    private long heard;
    private long encoded;
    private int filled;
    private int packed;

    /// <param name="output">Where the file goes.</param>
    /// <param name="tags">Its second packet.</param>
    /// <param name="channels">2, or 1 for the middle between left and right.</param>
    /// <param name="bitsASecond">What it may take.</param>
    /// <param name="runUp">Samples that will be written before the first one that is heard.</param>
    public OpusOutput(Stream output, byte[] tags, int channels, int bitsASecond, int runUp = 0)
    {
        this.channels = channels;
        frame = new float[channels * FrameLength];
        // Only the codec in C# gives the same bytes everywhere.
        OpusCodecFactory.AttemptToUseNativeLibrary = false;
        encoder = OpusCodecFactory.CreateEncoder(SampleRate.Hertz, channels, OpusApplication.OPUS_APPLICATION_AUDIO);
        encoder.Bitrate = bitsASecond;
        skip = encoder.Lookahead + runUp;
        pages = new OggPages(output);
        pages.Add(OpusHeaders.Head(skip, channels), 0);
        pages.Flush();
        pages.Add(tags, 0);
        pages.Flush();
    }

    public void Write(double left, double right)
    {
        heard++;
        Put(left, right);
    }

    /// <summary>Takes what is before the first sample and is not heard, as many samples as the run-up has.</summary>
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
        if (channels == 1)
        {
            frame[filled++] = (float)(0.5 * (left + right));
        }
        else
        {
            frame[filled++] = (float)left;
            frame[filled++] = (float)right;
        }
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
