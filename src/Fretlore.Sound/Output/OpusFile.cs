namespace Fretlore.Sound.Output;

/// <summary>Opus packets of 20 ms in Ogg (RFC 7845).</summary>
internal sealed class OpusFile
{
    private const int PacketsAPage = 50;

    private readonly OggPages pages;
    private readonly int skip;
    private int packed;

    /// <param name="output">Where the file goes.</param>
    /// <param name="tags">Its second packet.</param>
    /// <param name="channels">1 or 2.</param>
    /// <param name="skip">Samples that a decoder throws away before the first that counts.</param>
    public OpusFile(Stream output, byte[] tags, int channels, int skip)
    {
        this.skip = skip;
        pages = new OggPages(output);
        pages.Add(OpusHeaders.Head(skip, channels), 0);
        pages.Flush();
        pages.Add(tags, 0);
        pages.Flush();
    }

    /// <summary>Samples that the packets hold so far.</summary>
    public long Encoded { get; private set; }

    /// <param name="packet">The next packet.</param>
    /// <param name="length">Samples that count, as far as they are known: the last packet ends with them.</param>
    public void Add(ReadOnlySpan<byte> packet, long length)
    {
        Encoded += OpusOutput.FrameLength;
        if (packed == PacketsAPage)
        {
            pages.Flush();
            packed = 0;
        }
        packed++;
        pages.Add(packet, Math.Min(Encoded, length + skip));
    }

    public void End() => pages.Flush(isLast: true);
}
