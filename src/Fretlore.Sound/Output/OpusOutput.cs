using Concentus;
using Concentus.Enums;

namespace Fretlore.Sound.Output;

/// <summary>Opus in Ogg (RFC 7845), which browsers play: about a tenth of the size of a WAV file.</summary>
internal sealed class OpusOutput : IDisposable
{
    public const int UsualBitsASecond = 128_000;

    /// <summary>Samples a decoder needs to hear before the first one that counts, so that it has settled: the standard's 80 ms.</summary>
    public const int UsualRunUp = 4 * FrameLength;

    /// <summary>Samples of a packet.</summary>
    public const int FrameLength = SampleRate.Hertz / 50;

    /// <summary>Bytes of the longest packet there may be.</summary>
    public const int LongestPacket = 4000;

    private readonly OpusFile file;
    private readonly IOpusEncoder encoder;
    private readonly OpusFrame frame;
    private readonly byte[] packet = new byte[LongestPacket];
    private readonly int skip;
    private long heard;

    /// <param name="output">Where the file goes.</param>
    /// <param name="tags">Its second packet.</param>
    /// <param name="channels">2, or 1 for the middle between left and right.</param>
    /// <param name="bitsASecond">What it may take.</param>
    /// <param name="runUp">Samples that will be written before the first one that is heard.</param>
    public OpusOutput(Stream output, byte[] tags, int channels, int bitsASecond, int runUp = 0)
    {
        frame = new OpusFrame(channels);
        encoder = Encoder(channels, bitsASecond);
        skip = encoder.Lookahead + runUp;
        file = new OpusFile(output, tags, channels, skip);
    }

    /// <summary>An encoder that has heard nothing yet.</summary>
    public static IOpusEncoder Encoder(int channels, int bitsASecond)
    {
        // Only the codec in C# gives the same bytes everywhere.
        OpusCodecFactory.AttemptToUseNativeLibrary = false;
        var encoder = OpusCodecFactory.CreateEncoder(SampleRate.Hertz, channels, OpusApplication.OPUS_APPLICATION_AUDIO);
        encoder.Bitrate = bitsASecond;
        return encoder;
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
        if (file.Encoded < heard + skip) Put(left, right);
    }

    public void Dispose()
    {
        // The encoder is late by what it skips: silence pushes the end out.
        while (file.Encoded < heard + skip) Put(0, 0);
        file.End();
        encoder.Dispose();
    }

    private void Put(double left, double right)
    {
        if (!frame.Add(left, right)) return;
        var length = encoder.Encode(frame.Samples, FrameLength, packet, packet.Length);
        file.Add(packet.AsSpan(0, length), heard);
    }
}
