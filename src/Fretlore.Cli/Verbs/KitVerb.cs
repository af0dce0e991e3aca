using System.CommandLine;
using System.Globalization;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Lesson.Kit;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore kit</c>: makes everything for one song in one folder.</summary>
internal static class KitVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore." };
        var verb = new Verb(
            "kit", "Make a song's lesson kit: pages to print and show, sound, MusicXML, MIDI and the script of call-outs.",
            "fretlore kit my-song.lore -o my-song-kit", "fretlore kit my-song.lore -o my-song-kit --paper letter --parts rhythm,lead") { sheet };
        var flags = new KitFlags();
        flags.AddTo(verb);
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(sheet), flags.FolderOf(parsed), flags.Read(parsed)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string sheet, string output, KitWish wish)
    {
        if (OpenedSheet.Open(surroundings, sheet, "No kit was made", out var code) is not var (workspace, song)) return code;
        var options = wish.For(song);
        if (options.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        if (KitFolder.Refuse(surroundings, output) is { } unfit) return unfit;
        var folder = new KitFolder(surroundings.PathOf(output));
        KitResult result;
        using (var stop = new StopSignal())
        {
            try
            {
                result = KitProgress.Show(surroundings, progress => workspace.MakeKit(options.Value, progress, stop: stop.Token));
            }
            catch (OperationCanceledException)
            {
                surroundings.Error.WriteLine("Stopped: nothing was written.");
                return ExitCode.Stopped;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return ScratchFile.SayFull(surroundings, e);
            }
        }
        if (result is KitResult.Refused refused)
        {
            WrongUse.Write(surroundings.Error, $"no kit can be made of {sheet}: {refused.Reason}", refused.Remedy);
            return ExitCode.SheetHasErrors;
        }
        var made = (KitResult.Made)result;
        try
        {
            Report(surroundings, output, made, folder.Write(made.Kit));
            return ExitCode.Fine;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return WrongUse.Write(surroundings.Error, $"{output} can't be written: {Reason.Of(e)}", "Choose another folder with -o.");
        }
    }

    private static void Report(Surroundings surroundings, string output, KitResult.Made made, IReadOnlyList<string> kept)
    {
        var rows = made.Kit.Files.Select(file => (string[])[file.Path, Size(file.Bytes.Length), For(file.Audience), file.Purpose]);
        surroundings.Out.WriteLine($"{output}:");
        Columns.Write(surroundings.Out, rows.Select(row => (string[])["  " + row[0], .. row[1..]]));
        foreach (var name in kept) surroundings.Out.WriteLine($"You had changed a file of the earlier kit: it is kept as {name}.");
        foreach (var caution in made.Cautions) surroundings.Out.WriteLine(caution);
        surroundings.Out.WriteLine("If the song is someone else's, get a licence from its publisher before you publish pages, sound or film.");
    }

    private static string For(Audience audience) => audience switch
    {
        Audience.Everyone => "everyone",
        Audience.Supporters => "supporters",
        _ => "you",
    };

    private static string Size(int bytes) => string.Create(CultureInfo.InvariantCulture, $"{(bytes + 1023) / 1024,5} KB");
}
