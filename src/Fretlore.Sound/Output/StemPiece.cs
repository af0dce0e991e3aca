using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Text;
using Concentus;
using Concentus.Enums;

namespace Fretlore.Sound.Output;

/// <summary>A piece of a stem as a mono Opus file (RFC 7845) that joins the pieces around it without a gap.</summary>
internal static class StemPiece
{
    private const int FrameLength = SampleRate.Hertz / 50;
    private const int LongestPacket = 1500;
    private const int PacketsAPage = 100;

    /// <summary>Heard by the decoder before the piece and thrown away, so that it has settled: the standard's 80 ms.</summary>
    private const int RunUp = 4 * FrameLength;

    /// <summary>Encodes samples of a sound.</summary>
    /// <param name="sound">All of the sound, -1 to 1.</param>
    /// <param name="from">The first sample of the piece.</param>
    /// <param name="to">The sample after its last.</param>
    /// <param name="bitsASecond">What it may take.</param>
    public static ImmutableArray<byte> Encode(ReadOnlySpan<float> sound, int from, int to, int bitsASecond)
    {
        // Only the codec in C# gives the same bytes everywhere.
        OpusCodecFactory.AttemptToUseNativeLibrary = false;
        using var encoder = OpusCodecFactory.CreateEncoder(SampleRate.Hertz, 1, OpusApplication.OPUS_APPLICATION_AUDIO);
        encoder.Bitrate = bitsASecond;
        var runUp = Math.Min(RunUp, from);
        var skip = encoder.Lookahead + runUp;
        var heard = skip + to - from;
        using var file = new MemoryStream();
        var pages = new OggPages(file);
        pages.Add(Head(skip), 0);
        pages.Flush();
        pages.Add([.. "OpusTags"u8, 8, 0, 0, 0, .. "Fretlore"u8, 0, 0, 0, 0], 0);
        pages.Flush();

        var frame = new float[FrameLength];
        var packet = new byte[LongestPacket];
        var packed = 0;
        for (var encoded = 0; encoded < heard;)
        {
            var at = from - runUp + encoded;
            for (var i = 0; i < frame.Length; i++) frame[i] = at + i < sound.Length ? sound[at + i] : 0;
            var length = encoder.Encode(frame, FrameLength, packet, packet.Length);
            encoded += FrameLength;
            if (packed++ == PacketsAPage)
            {
                pages.Flush();
                packed = 1;
            }
            pages.Add(packet.AsSpan(0, length), Math.Min(encoded, heard));
        }
        pages.Flush(isLast: true);
        return ImmutableArray.Create(file.ToArray());
    }

    private static byte[] Head(int skip)
    {
        var head = new byte[19];
        Encoding.ASCII.GetBytes("OpusHead", head);
        head[8] = 1;
        head[9] = 1;
        BinaryPrimitives.WriteUInt16LittleEndian(head.AsSpan(10), (ushort)skip);
        BinaryPrimitives.WriteUInt32LittleEndian(head.AsSpan(12), SampleRate.Hertz);
        return head;
    }
}
