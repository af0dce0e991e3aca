using System.CommandLine;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Lesson.Kit;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore errata</c>: says what changed between two kits.</summary>
internal static class ErrataVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var old = new Argument<string>("OLD") { Description = "The old kit's folder, or its kit.json." };
        var now = new Argument<string>("NEW") { Description = "The new kit's folder, or its kit.json." };
        var verb = new Verb(
            "errata", "Say what changed from one kit to the next, bar by bar and file by file, for a note to those who have the old one.",
            "fretlore errata my-song-kit-1 my-song-kit-2") { old, now };
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(old), parsed.GetRequiredValue(now)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string old, string now)
    {
        if (Read(surroundings, old) is not { } before || Read(surroundings, now) is not { } after) return ExitCode.WrongUse;
        var lines = Errata.Between(before, after);
        if (lines.Count == 0) surroundings.Out.WriteLine("The kits are the same.");
        foreach (var line in lines) surroundings.Out.WriteLine("- " + Marked.Safe(line));
        return ExitCode.Fine;
    }

    private static KitList? Read(Surroundings surroundings, string path)
    {
        var full = surroundings.PathOf(path);
        var file = Directory.Exists(full) ? Path.Combine(full, KitList.FileName) : full;
        try
        {
            if (KitList.Read(AnyFile.Read(file)) is { } list) return list;
            WrongUse.Write(surroundings.Error, $"{path} is no kit of Fretlore's.", $"Give a kit's folder, or the {KitList.FileName} in it.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            WrongUse.Write(surroundings.Error, $"{path} can't be read: {Reason.Of(e)}", $"Give a kit's folder, or the {KitList.FileName} in it.");
        }
        return null;
    }
}
