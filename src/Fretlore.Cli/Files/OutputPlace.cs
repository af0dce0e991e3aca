using Fretlore.Cli.Output;

namespace Fretlore.Cli.Files;

/// <summary>Looks whether a verb can write where it was told to, before it does the work.</summary>
/// <remarks>What can go wrong later, such as a full disk, is still met where the file is written.</remarks>
internal static class OutputPlace
{
    /// <summary>Says why a file can't be written there, and returns the exit code; null where it can, as far as can be seen.</summary>
    /// <param name="surroundings">Where it is said.</param>
    /// <param name="name">As typed.</param>
    /// <param name="replaces">Whether a file that is there may be replaced; where not, the remedy is <c>--replace</c>.</param>
    public static int? RefuseFile(Surroundings surroundings, string name, bool replaces = true) => Refuse(surroundings, name, () =>
    {
        if (name.Length == 0 || name.Contains('\0')) return ("that can't be a file.", "Name the file with -o.");
        var path = surroundings.PathOf(name);
        if (Directory.Exists(path) || Path.EndsInDirectorySeparator(path)) return ($"{name} is a folder.", "Give the file to write with -o.");
        if (path.StartsWith("/dev/", StringComparison.Ordinal)) return ($"{name} is a device.", "Give a file to write with -o.");
        if (File.Exists(path))
        {
            if (!replaces) return ($"{name} is already there and was left as it is.", "Choose another name with -o, or replace it with --replace.");
            using var old = new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete);
        }
        Touch(Path.GetDirectoryName(path) ?? path);
        return null;
    });

    /// <summary>Says why nothing can be written into a folder, new or not, and returns the exit code; null where it can, as far as can be seen.</summary>
    /// <param name="surroundings">Where it is said.</param>
    /// <param name="name">As typed.</param>
    /// <param name="refusal">What else the folder must be; null when that is so.</param>
    public static int? RefuseFolder(Surroundings surroundings, string name, Func<string, (string Message, string Remedy)?> refusal) => Refuse(surroundings, name, () =>
    {
        if (name.Length == 0 || name.Contains('\0')) return ("that can't be a folder.", "Name the folder with -o.");
        var path = surroundings.PathOf(name);
        if (refusal(path) is { } wrong) return wrong;
        // What is not there yet is made in what is.
        var place = path;
        while (!Directory.Exists(place) && !File.Exists(place) && Path.GetDirectoryName(place) is { } above) place = above;
        if (File.Exists(place)) return ($"{name} can't be written: {Path.GetRelativePath(surroundings.Folder, place)} on the way to it is a file.", "Choose another folder with -o.");
        Touch(place);
        return null;
    });

    private static int? Refuse(Surroundings surroundings, string name, Func<(string Message, string Remedy)?> look)
    {
        try
        {
            return look() is var (message, remedy) ? WrongUse.Write(surroundings.Error, message, remedy) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return WrongUse.Write(surroundings.Error, $"{name} can't be written: {Reason.Of(e)}", "Choose another place with -o.");
        }
    }

    // Only trying tells whether a file may be made in a folder.
    private static void Touch(string folder)
    {
        using var file = new FileStream(Path.Combine(folder, $".fretlore-{Guid.NewGuid():N}.tmp"), FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
    }
}
