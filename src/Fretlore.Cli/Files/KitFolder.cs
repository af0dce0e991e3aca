using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Fretlore.Lesson.Kit;

namespace Fretlore.Cli.Files;

/// <summary>The folder a kit is written to. What the kit did not make is never deleted and never written over.</summary>
/// <remarks>
/// A new kit is made in a temporary folder and renamed, so it is there as a whole or not at all. In an existing one every changed file is
/// prepared first and then renamed over the old one, the list last.
/// </remarks>
internal sealed class KitFolder(string path)
{
    private const string BuildingMark = ".fretlore-building-";

    /// <summary>Says why no kit can be written to a folder, and returns the exit code; null where one can, as far as can be seen.</summary>
    public static int? Refuse(Surroundings surroundings, string name) => OutputPlace.RefuseFolder(
        surroundings, name, path => new KitFolder(path).Refusal() is var (message, remedy) ? ($"{name} can't hold the kit: {message}", remedy) : null);

    /// <summary>Why no kit may be written here: what is wrong and what to do; null when one may.</summary>
    public (string Message, string Remedy)? Refusal()
    {
        if (File.Exists(path)) return ("it is a file.", "Give a folder that is new, empty or a kit.");
        if (!Directory.Exists(path)) return null;
        var strangers = Directory.EnumerateFileSystemEntries(path).Any(e => !Path.GetFileName(e).StartsWith(BuildingMark, StringComparison.Ordinal));
        if (!strangers || ReadList() is not null) return null;
        return ("it has files in it and is not a kit, so nothing was written.", "Give a folder that is new, empty or a kit of Fretlore's.");
    }

    /// <summary>Writes the kit.</summary>
    /// <returns>Files that someone changed since the last kit: they were kept under the names given here.</returns>
    /// <exception cref="IOException">It can't be written; an existing kit is untouched.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written; an existing kit is untouched.</exception>
    public IReadOnlyList<string> Write(LessonKit kit)
    {
        // Writing takes milliseconds: an interrupt in them waits for its end.
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, signal => signal.Cancel = true);
        using var end = PosixSignalRegistration.Create(PosixSignal.SIGTERM, signal => signal.Cancel = true);

        var exists = Directory.Exists(path);
        var place = exists ? path : Path.GetDirectoryName(path) ?? path;
        RemoveAbandoned(place);
        var building = Path.Combine(place, BuildingMark + Guid.NewGuid().ToString("N"));
        try
        {
            var changed = kit.Files.Where(file => !IsSame(file)).ToList();
            Directory.CreateDirectory(building);
            foreach (var file in changed) Create(In(building, file.Path), file);
            if (exists) return Replace(changed, kit, building);
            Directory.Move(building, path);
            return [];
        }
        finally
        {
            if (Directory.Exists(building)) Directory.Delete(building, recursive: true);
        }
    }

    private List<string> Replace(List<KitFile> changed, LessonKit kit, string building)
    {
        foreach (var file in changed)
        {
            if (Directory.Exists(In(path, file.Path))) throw new IOException($"{file.Path} in it is a folder.");
        }
        var before = ReadList()?.Files ?? [];
        var kept = new List<string>();
        foreach (var file in changed)
        {
            var target = In(path, file.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            if (File.Exists(target) && file.Path != KitList.FileName && !IsOurs(target, before.FirstOrDefault(e => e.Path == file.Path)))
            {
                var aside = FreeNameFor(target);
                File.Move(target, aside);
                kept.Add(Path.GetRelativePath(path, aside));
            }
            File.Move(In(building, file.Path), target, overwrite: true);
        }
        var now = kit.Files.Select(file => file.Path).ToHashSet(StringComparer.Ordinal);
        foreach (var entry in before.Where(entry => !now.Contains(entry.Path))) RemoveIfOurs(entry);
        return kept;
    }

    private void RemoveIfOurs(KitListEntry entry)
    {
        var file = Path.GetFullPath(In(path, entry.Path));
        // A list is only text: it may not name what lies outside the folder.
        if (!file.StartsWith(path + Path.DirectorySeparatorChar, StringComparison.Ordinal) || !File.Exists(file) || !IsOurs(file, entry)) return;
        File.Delete(file);
        var folder = Path.GetDirectoryName(file)!;
        if (folder != path && !Directory.EnumerateFileSystemEntries(folder).Any()) Directory.Delete(folder);
    }

    /// <summary>The hash of each file by its path, as listed; none where there is no kit.</summary>
    public IReadOnlyDictionary<string, string> Hashes() =>
        (Directory.Exists(path) ? ReadList()?.Files ?? [] : []).ToDictionary(file => file.Path, file => file.Sha256, StringComparer.Ordinal);

    private KitList? ReadList()
    {
        var list = Path.Combine(path, KitList.FileName);
        return File.Exists(list) ? KitList.Read(File.ReadAllBytes(list)) : null;
    }

    private bool IsSame(KitFile file)
    {
        var there = new FileInfo(In(path, file.Path));
        return there.Exists && there.Length == file.Bytes.Length && File.ReadAllBytes(there.FullName).AsSpan().SequenceEqual(file.Bytes.AsSpan());
    }

    private static bool IsOurs(string file, KitListEntry? listed) => listed is not null && HashOf(file) == listed.Sha256;

    private static string HashOf(string file)
    {
        using var stream = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }

    /// <summary>For <c>script.md</c>: <c>script.kept.md</c>, or <c>script.kept-2.md</c> where that is taken.</summary>
    private static string FreeNameFor(string file)
    {
        var stem = Path.Combine(Path.GetDirectoryName(file)!, Path.GetFileNameWithoutExtension(file) + ".kept");
        var free = stem + Path.GetExtension(file);
        for (var number = 2; Path.Exists(free); number++) free = $"{stem}-{number}{Path.GetExtension(file)}";
        return free;
    }

    private static void Create(string file, KitFile content)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        using var stream = new FileStream(file, FileMode.CreateNew, FileAccess.Write);
        stream.Write(content.Bytes.AsSpan());
    }

    /// <summary>Removes what a run that was killed left behind.</summary>
    private static void RemoveAbandoned(string place)
    {
        if (!Directory.Exists(place)) return;
        foreach (var folder in Directory.EnumerateDirectories(place, BuildingMark + "*"))
        {
            if (DateTime.UtcNow - Directory.GetLastWriteTimeUtc(folder) > TimeSpan.FromHours(1)) Directory.Delete(folder, recursive: true);
        }
    }

    private static string In(string folder, string kitPath) => Path.Combine([folder, .. kitPath.Split('/')]);
}
