using System.Buffers.Binary;

namespace Fretlore.Sound.Output;

/// <summary>Packs packets of one stream into Ogg pages (RFC 3533).</summary>
internal sealed class OggPages(Stream output)
{
    private const int HeaderLength = 27;
    private const int MostSegments = 255;
    private const uint Serial = 1; // There is one stream in the file, and the same song gives the same bytes.

    private static readonly uint[] Remainders = [.. Enumerable.Range(0, 256).Select(Remainder)];

    private readonly List<byte> segments = [];
    private readonly List<byte> body = [];
    private uint sequence;
    private long granule;

    /// <summary>Adds a packet of less than a page.</summary>
    /// <param name="packet">The packet.</param>
    /// <param name="endsAt">Samples of the stream up to the packet's end.</param>
    public void Add(ReadOnlySpan<byte> packet, long endsAt)
    {
        var needed = packet.Length / 255 + 1;
        if (segments.Count + needed > MostSegments) Flush();
        for (var i = 1; i < needed; i++) segments.Add(255);
        segments.Add((byte)(packet.Length % 255));
        body.AddRange(packet);
        granule = endsAt;
    }

    /// <summary>Writes what is packed so far as a page.</summary>
    public void Flush(bool isLast = false)
    {
        var page = new byte[HeaderLength + segments.Count + body.Count];
        "OggS"u8.CopyTo(page);
        page[5] = (byte)((sequence == 0 ? 2 : 0) | (isLast ? 4 : 0));
        BinaryPrimitives.WriteInt64LittleEndian(page.AsSpan(6), granule);
        BinaryPrimitives.WriteUInt32LittleEndian(page.AsSpan(14), Serial);
        BinaryPrimitives.WriteUInt32LittleEndian(page.AsSpan(18), sequence++);
        page[26] = (byte)segments.Count;
        segments.CopyTo(page, HeaderLength);
        body.CopyTo(page, HeaderLength + segments.Count);
        uint sum = 0;
        foreach (var value in page) sum = sum << 8 ^ Remainders[sum >> 24 ^ value];
        BinaryPrimitives.WriteUInt32LittleEndian(page.AsSpan(22), sum);
        output.Write(page);
        segments.Clear();
        body.Clear();
    }

    private static uint Remainder(int index)
    {
        var value = (uint)index << 24;
        for (var bit = 0; bit < 8; bit++) value = (value & 0x80000000) != 0 ? value << 1 ^ 0x04C11DB7 : value << 1;
        return value;
    }
}
