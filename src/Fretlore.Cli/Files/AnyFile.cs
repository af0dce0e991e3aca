namespace Fretlore.Cli.Files;

/// <summary>A file of another program, read whole; no more of it than can be imported.</summary>
internal static class AnyFile
{
    private const int Most = 65 * 1024 * 1024;

    /// <exception cref="IOException">It can't be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public static byte[] Read(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var bytes = new MemoryStream();
        var buffer = new byte[64 * 1024];
        while (bytes.Length < Most)
        {
            var read = stream.Read(buffer, 0, buffer.Length);
            if (read == 0) break;
            bytes.Write(buffer, 0, read);
        }
        return bytes.ToArray();
    }
}
