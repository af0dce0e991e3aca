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
        // Renaming would get round a file's own write protection.
        using (new FileStream(target, FileMode.Open, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete))
        {
        }

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

    private static string TemporaryBeside(string path) =>
        Path.Combine(Path.GetDirectoryName(path) ?? "", $".{Path.GetFileName(path)}.{Guid.NewGuid():N}.tmp");
}
