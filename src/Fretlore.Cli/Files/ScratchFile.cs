using Fretlore.Cli.Output;

namespace Fretlore.Cli.Files;

/// <summary>Room on disk to work in, gone when it is closed.</summary>
internal static class ScratchFile
{
    /// <summary>Where it lies: the system's folder for temporary files.</summary>
    public static string Folder => Path.GetTempPath();

    /// <summary>Says that there was no room for sound, and returns the exit code.</summary>
    public static int SayFull(Surroundings surroundings, Exception refusal) => WrongUse.Write(
        surroundings.Error, $"the sound can't be worked out in {Folder}: {Reason.Of(refusal)}", "Make room there, set TMPDIR to another folder, or leave the sound out with --no-sound.");

    /// <exception cref="IOException">There is no room.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written there.</exception>
    public static Stream Open()
    {
        var path = Path.Combine(Folder, $"fretlore-{Guid.NewGuid():N}.tmp");
        var room = new FileStream(path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Delete, 1 << 16, FileOptions.DeleteOnClose);
        // Gone from the folder at once, so that a run that is killed leaves nothing there.
        File.Delete(path);
        return room;
    }
}
