namespace Fretlore.Cli.Files;

/// <summary>Room on disk to work in, gone when it is closed.</summary>
internal static class ScratchFile
{
    /// <summary>Where it lies: the system's folder for temporary files.</summary>
    public static string Folder => Path.GetTempPath();

    /// <exception cref="IOException">There is no room.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written there.</exception>
    public static Stream Open() => new FileStream(
        Path.Combine(Folder, $"fretlore-{Guid.NewGuid():N}.tmp"), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose);
}
