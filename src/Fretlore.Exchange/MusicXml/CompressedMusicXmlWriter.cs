using System.IO.Compression;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Writes compressed MusicXML, as the standard packs it: the media type first and uncompressed, a container, the score.</summary>
public static class CompressedMusicXmlWriter
{
    private const string MediaType = "application/vnd.recordare.musicxml";
    private const string Root = "score.musicxml";

    public static void Write(Stream output, Song song, SongReading reading, StaffForm form = StaffForm.Notation)
    {
        using var packed = new MemoryStream();
        using (var archive = new ZipArchive(packed, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(archive, "mimetype", CompressionLevel.NoCompression, stream => stream.Write(System.Text.Encoding.ASCII.GetBytes(MediaType)));
            Add(archive, "META-INF/container.xml", CompressionLevel.Optimal, stream => stream.Write(System.Text.Encoding.UTF8.GetBytes(
                $"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<container>\n <rootfiles>\n  <rootfile full-path=\"{Root}\" media-type=\"{MediaType}+xml\"/>\n </rootfiles>\n</container>\n")));
            Add(archive, Root, CompressionLevel.Optimal, stream => MusicXmlWriter.Write(stream, song, reading, form));
        }
        output.Write(packed.ToArray());
    }

    // One date for all files: the same song gives the same bytes.
    private static void Add(ZipArchive archive, string name, CompressionLevel level, Action<Stream> write)
    {
        var entry = archive.CreateEntry(name, level);
        entry.LastWriteTime = new DateTimeOffset(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);
        using var stream = entry.Open();
        write(stream);
    }
}
