using System.IO.Compression;
using System.Xml.Linq;
using Fretlore.Exchange.Import;

namespace Fretlore.Exchange.MusicXml.Reading;

/// <summary>Finds the score in compressed MusicXML; nothing is written anywhere.</summary>
internal static class Compressed
{
    private const int MostEntries = 2000;
    private const string Container = "META-INF/container.xml";

    public static bool IsZip(ReadOnlySpan<byte> bytes) => bytes.Length >= 4 && bytes[0] == 'P' && bytes[1] == 'K' && bytes[2] == 3 && bytes[3] == 4;

    public static XElement Load(byte[] bytes)
    {
        try
        {
            using var archive = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
            if (archive.Entries.Count > MostEntries) throw Odd("it holds more files than any score");
            var entry = Root(archive) ?? throw Odd("it holds no score");
            using var stream = new LimitedStream(entry.Open(), ImportLimits.MostBytes);
            return XmlTree.Load(stream);
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException or ArgumentException or OverflowException)
        {
            throw Odd("its compression is broken");
        }
    }

    private static ZipArchiveEntry? Root(ZipArchive archive)
    {
        if (archive.GetEntry(Container) is { } container)
        {
            using var stream = new LimitedStream(container.Open(), 1024 * 1024);
            var paths = XmlTree.Load(stream).Descendants("rootfile").Select(r => (Path: r.Attribute("full-path")?.Value ?? "", Type: r.Attribute("media-type")?.Value));
            foreach (var (path, type) in paths)
            {
                if (type is not (null or "" or "application/vnd.recordare.musicxml+xml" or "application/xml" or "text/xml")) continue;
                if (path.Split('/', '\\').Contains("..") || path.StartsWith('/') || path.Contains(':', StringComparison.Ordinal)) throw Odd("it points to a file outside of itself");
                if (archive.GetEntry(path) is { } root) return root;
            }
            throw Odd("its table of contents names a score that is not there");
        }
        return archive.Entries.FirstOrDefault(e => !e.FullName.StartsWith("META-INF/", StringComparison.Ordinal)
            && (e.FullName.EndsWith(".xml", StringComparison.OrdinalIgnoreCase) || e.FullName.EndsWith(".musicxml", StringComparison.OrdinalIgnoreCase)));
    }

    private static RefusedFileException Odd(string why) => new($"The compressed file can't be used: {why}.", "Export it again from the program it comes from, or as uncompressed MusicXML.");
}

/// <summary>A stream that refuses to give more than so many bytes, whatever the archive says of its size.</summary>
internal sealed class LimitedStream(Stream inner, long most) : Stream
{
    private long left = most;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var read = inner.Read(buffer);
        left -= read;
        if (left < 0) throw new RefusedFileException("The compressed file grows beyond what is taken when it is unpacked.", "Export it again, or split the score.");
        return read;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing) inner.Dispose();
        base.Dispose(disposing);
    }
}
