using System.Buffers.Binary;
using System.Text;
using Concentus;
using Concentus.Enums;
using Fretlore.Score;

namespace Fretlore.Sound.Output;

/// <summary>Opus in Ogg (RFC 7845), which browsers play: about a tenth of the size of a WAV file.</summary>
internal sealed class OpusOutput : ISoundOutput
{
    public const int UsualBitsASecond = 128_000;

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

    public OpusOutput(Stream output, SongInfo info, int bitsASecond)
    {
        // Only the codec in C# gives the same bytes everywhere.
        OpusCodecFactory.AttemptToUseNativeLibrary = false;
        encoder = OpusCodecFactory.CreateEncoder(SampleRate.Hertz, 2, OpusApplication.OPUS_APPLICATION_AUDIO);
        encoder.Bitrate = bitsASecond;
        skip = encoder.Lookahead;
        pages = new OggPages(output);
        pages.Add(Head(skip), 0);
        pages.Flush();
        pages.Add(Tags(info), 0);
        pages.Flush();
    }

    public void Write(double left, double right)
    {
        heard++;
        Put(left, right);
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

    private static byte[] Head(int skip)
    {
        var head = new byte[19];
        "OpusHead"u8.CopyTo(head);
        head[8] = 1;
        head[9] = 2;
        BinaryPrimitives.WriteUInt16LittleEndian(head.AsSpan(10), (ushort)skip);
        BinaryPrimitives.WriteUInt32LittleEndian(head.AsSpan(12), SampleRate.Hertz);
        return head;
    }

    private static byte[] Tags(SongInfo info)
    {
        using var tags = new MemoryStream();
        tags.Write("OpusTags"u8);
        Put("Fretlore");
        var comments = new List<string> { "TITLE=" + info.Title };
        if (info.Artist is { } artist) comments.Add("ARTIST=" + artist);
        if (info.Rights is { } rights) comments.Add("COPYRIGHT=" + rights);
        WriteLength(comments.Count);
        comments.ForEach(Put);
        return tags.ToArray();

        void Put(string text)
        {
            // Enough for a line, little enough for a page.
            var bytes = Encoding.UTF8.GetBytes(text.Length > 2000 ? text[..2000] : text);
            WriteLength(bytes.Length);
            tags.Write(bytes);
        }

        void WriteLength(int length)
        {
            Span<byte> bytes = stackalloc byte[4];
            BinaryPrimitives.WriteInt32LittleEndian(bytes, length);
            tags.Write(bytes);
        }
    }
}
