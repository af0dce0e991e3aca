namespace Fretlore.Cli.Files;

/// <summary>Writes files so that a crash leaves the old one whole: to a temporary name beside it, then renamed over it.</summary>
internal static class SafeFile
{
    /// <summary>Replaces what is in an existing file; who may read and write it stays as it was.</summary>
    /// <exception cref="IOException">It can't be written; the old file is untouched.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; the old file is untouched.</exception>
    public static void Replace(string path, ReadOnlySpan<byte> bytes)
    {
        // A link stays a link: what it points to is replaced.
        var target = File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
        RefuseProtected(target);

        var temporary = TemporaryBeside(target);
        try
        {
            using (var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.Write))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }
            if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(temporary, File.GetUnixFileMode(target));
            File.Move(temporary, target, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    /// <summary>Writes a file that does not exist yet.</summary>
    /// <returns>False when there already is one; it is untouched.</returns>
    public static bool TryCreate(string path, ReadOnlySpan<byte> bytes)
    {
        FileStream stream;
        try
        {
            stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write);
        }
        catch (IOException) when (Path.Exists(path))
        {
            return false;
        }
        using (stream) stream.Write(bytes);
        return true;
    }

    /// <summary>Writes a file, new or over an old one, that is made bit by bit and may be long.</summary>
    /// <param name="path">The file.</param>
    /// <param name="write">Writes it; what it throws leaves everything as it was. The second stream is room to work in that is gone afterwards.</param>
    /// <exception cref="IOException">It can't be written; an old file is untouched.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; an old file is untouched.</exception>
    public static void Write(string path, Action<Stream, Stream> write)
    {
        var (temporary, room) = (TemporaryBeside(path), TemporaryBeside(path));
        try
        {
            using (var stream = new FileStream(temporary, FileMode.CreateNew, FileAccess.ReadWrite))
            using (var work = new FileStream(room, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose))
            {
                write(stream, work);
                stream.Flush(flushToDisk: true);
            }
            if (File.Exists(path)) RefuseProtected(path);
            // What a link points to is left alone: it may be anything, such as a device.
            File.Move(temporary, path, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    // Renaming would get round a file's own write protection.
    private static void RefuseProtected(string file)
    {
        using var open = new FileStream(file, FileMode.Open, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete);
    }

    private static string TemporaryBeside(string path) =>
        Path.Combine(Path.GetDirectoryName(path) ?? "", $".{Path.GetFileName(path)}.{Guid.NewGuid():N}.tmp");
}
