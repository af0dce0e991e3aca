using System.Runtime.CompilerServices;

namespace Fretlore.Tests.Outside;

/// <summary>Where the checkout and the check values beside it are.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    /// <summary>A file of the check values that stand beside the checkout, or null when they are not there.</summary>
    public static string? Check(string name)
    {
        var path = Path.Combine(Root, "..", "shared", "checks", name);
        return File.Exists(path) || Directory.Exists(path) ? path : null;
    }

    private static string FindRoot([CallerFilePath] string here = "")
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Fretlore.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException($"No Fretlore.slnx above {AppContext.BaseDirectory} (built from {here}).");
    }
}
