using System.CommandLine;
using System.Diagnostics;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore watch</c>: makes a kit again at each save of its sheet.</summary>
internal static class WatchVerb
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore." };
        var verb = new Verb(
            "watch", "Make a kit, and make what changed of it again at each save of the sheet, until you stop it with Ctrl+C.",
            "fretlore watch my-song.lore -o my-song-kit", "fretlore watch my-song.lore -o my-song-kit --show tab --no-sound") { sheet };
        var flags = new KitFlags();
        flags.AddTo(verb);
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(sheet), flags.FolderOf(parsed), flags.Read(parsed)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string sheet, string output, KitWish wish)
    {
        var file = SheetFile.Read(surroundings, sheet);
        if (!file.IsThere || sheet == SheetFile.StandardInput)
        {
            FindingPrinter.Write(surroundings.Error, sheet, file.Findings, surroundings.Colours);
            if (file.IsThere) return WrongUse.Write(surroundings.Error, "the standard input can't be watched.", "Name the sheet's file.");
            return file.ExitCode;
        }
        if (KitFolder.Refuse(surroundings, output) is { } unfit) return unfit;
        var folder = new KitFolder(surroundings.PathOf(output));
        using var stop = new StopSignal();
        using var watch = new KitWatch(surroundings, sheet, folder, wish);
        var clock = Stopwatch.StartNew();
        surroundings.Out.WriteLine($"Watching {sheet}; stop with Ctrl+C.");
        surroundings.Out.Flush();
        while (watch.Look(clock.Elapsed, stop.Token))
        {
            if (stop.Token.WaitHandle.WaitOne(Pause)) return ExitCode.Fine;
        }
        return ExitCode.WrongUse;
    }
}
