using System.CommandLine;
using System.Globalization;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Engraving.Layout;
using Fretlore.Lesson.Kit;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore kit</c>: makes everything for one song in one folder.</summary>
internal static class KitVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore." };
        var output = new Option<string>("--output", "-o")
        {
            Description = "The folder to make: new, empty or an earlier kit. Files in it that are not the kit's stay as they are.",
            HelpName = "FOLDER",
            Required = true,
        };
        var paper = new Option<string>("--paper") { Description = "The pages' paper, or a phone's or film's frame.", DefaultValueFactory = _ => "a4" };
        paper.AcceptOnlyFromAmong([.. PaperPreset.All.Select(p => p.Name)]);
        var show = new Option<string>("--show") { Description = "Staff with tablature, or one of them.", DefaultValueFactory = _ => "both" };
        show.AcceptOnlyFromAmong("both", "tab", "staff");
        var parts = new Option<string?>("--parts")
        {
            Description = "Parts on the pages, by their short names with commas between; all when not given. The other files have all parts.",
            HelpName = "NAMES",
        };
        var symbols = PagesVerb.SymbolsOption();
        var degrees = PagesVerb.DegreesOption();
        var noSound = new Option<bool>("--no-sound") { Description = "Leave the sound out: it takes longest." };
        var verb = new Verb(
            "kit", "Make a song's lesson kit: pages to print and show, sound, MusicXML, MIDI and the script of call-outs.",
            "fretlore kit my-song.lore -o my-song-kit", "fretlore kit my-song.lore -o my-song-kit --paper letter --parts rhythm,lead")
        {
            sheet, output, paper, show, parts, symbols, degrees, noSound,
        };
        var hands = new HandSignFlags();
        hands.AddTo(verb);
        verb.SetAction(parsed =>
        {
            var options = new KitOptions
            {
                Paper = PaperPreset.Find(parsed.GetRequiredValue(paper)) ?? PaperPreset.A4,
                Show = NotationOf(parsed.GetRequiredValue(show)),
                SymbolStyle = PagesVerb.StyleOf(parsed.GetRequiredValue(symbols)),
                Degrees = parsed.GetValue(degrees),
                Hands = hands.Read(parsed),
                SoundRoom = parsed.GetValue(noSound) ? null : ScratchFile.Open,
            };
            return Run(surroundings, parsed.GetRequiredValue(sheet), parsed.GetRequiredValue(output), options, parsed.GetValue(parts));
        });
        return verb;
    }

    /// <summary>What <c>--show</c> asks for.</summary>
    public static Notation NotationOf(string word) => word switch
    {
        "tab" => Notation.Tab,
        "staff" => Notation.Staff,
        _ => Notation.StaffAndTab,
    };

    private static int Run(Surroundings surroundings, string sheet, string output, KitOptions options, string? parts)
    {
        if (OpenedSheet.Open(surroundings, sheet, "No kit was made", out var code) is not var (workspace, song)) return code;
        var chosen = PartChoice.Read(parts, song);
        if (chosen.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        if (KitFolder.Refuse(surroundings, output) is { } unfit) return unfit;
        var folder = new KitFolder(surroundings.PathOf(output));
        options = options with { Parts = chosen.Value };
        KitResult result;
        using (var stop = new StopSignal())
        {
            try
            {
                result = KitProgress.Show(surroundings, progress => workspace.MakeKit(options, progress, stop: stop.Token));
            }
            catch (OperationCanceledException)
            {
                surroundings.Error.WriteLine("Stopped: nothing was written.");
                return ExitCode.Stopped;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return WrongUse.Write(
                    surroundings.Error, $"the sound can't be worked out in {ScratchFile.Folder}: {Reason.Of(e)}",
                    "Make room there, set TMPDIR to another folder, or leave the sound out with --no-sound.");
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
