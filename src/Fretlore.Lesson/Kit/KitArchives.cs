using System.Collections.Immutable;
using System.IO.Compression;

namespace Fretlore.Lesson.Kit;

/// <summary>The archives to hand out: one with what is for everyone, one for supporters, who get that as well.</summary>
/// <remarks>The same files give the same bytes: entries have a fixed date and stand in the kit's order.</remarks>
internal static class KitArchives
{
    // The earliest date a zip archive can hold (PKWARE APPNOTE 4.4.6).
    private static readonly DateTimeOffset FixedDate = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <param name="name">The folder that the files stand in, and part of the archives' names.</param>
    /// <param name="files">The kit's files.</param>
    /// <returns>An archive for each audience there is something for.</returns>
    public static IEnumerable<KitFile> Of(string name, ImmutableArray<KitFile> files)
    {
        ImmutableArray<KitFile> free = [.. files.Where(file => file.Audience == Audience.Everyone)];
        ImmutableArray<KitFile> all = [.. files.Where(file => file.Audience is Audience.Everyone or Audience.Supporters)];
        if (free.Length > 0)
        {
            yield return KitFile.Written($"{name}-everyone.zip", "All that is for everyone in one archive", stream => Write(stream, name, free)) with { Audience = Audience.Teacher };
        }
        if (all.Length > free.Length)
        {
            yield return KitFile.Written($"{name}-supporters.zip", "All that is for supporters in one archive, what is for everyone included", stream => Write(stream, name, all)) with { Audience = Audience.Teacher };
        }
    }

    private static void Write(Stream stream, string name, ImmutableArray<KitFile> files)
    {
        using var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true);
        foreach (var file in files)
        {
            var isPacked = Path.GetExtension(file.Path) is ".opus" or ".png" or ".pdf" or ".mxl";
            var entry = archive.CreateEntry($"{name}/{file.Path}", isPacked ? CompressionLevel.NoCompression : CompressionLevel.Optimal);
            entry.LastWriteTime = FixedDate;
            using var content = entry.Open();
            content.Write(file.Bytes.AsSpan());
        }
    }
}
