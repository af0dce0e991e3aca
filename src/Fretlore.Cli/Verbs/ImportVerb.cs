using System.CommandLine;
using System.Globalization;
using System.Text;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Workspace.Exchange;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore import</c>: makes a sheet of a file from another program; never over a file that is there, unless asked.</summary>
internal static class ImportVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var file = new Argument<string>("FILE") { Description = "The file to read: MusicXML (.musicxml, .xml), compressed MusicXML (.mxl), MIDI (.mid) or plain-text tab (.txt)." };
        var output = new Option<string>("--output", "-o") { Description = "The sheet to make.", HelpName = "NAME.lore", Required = true };
        var replace = new Option<bool>("--replace") { Description = "Replace the sheet when it is there already." };
        var verb = new Verb(
            "import", "Make a sheet of a MusicXML file, a MIDI file or a plain-text tab, and list each thing that was not carried over as it was.",
            "fretlore import my-song.musicxml -o my-song.lore", "fretlore import my-song.mid -o my-song.lore", "fretlore import my-song.txt -o my-song.lore") { file, output, replace };
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(file), parsed.GetRequiredValue(output), parsed.GetValue(replace)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string path, string output, bool replace)
    {
        if (!output.EndsWith(".lore", StringComparison.OrdinalIgnoreCase)) return WrongUse.Write(surroundings.Error, $"A sheet's name ends in .lore, and {output} doesn't.", "Choose another name with -o.");
        if (OutputPlace.RefuseFile(surroundings, output, replace) is { } unfit) return unfit;
        byte[] bytes;
        try
        {
            if (Directory.Exists(surroundings.PathOf(path))) return WrongUse.Write(surroundings.Error, $"{path} is a folder.", "Give the file to read.");
            bytes = AnyFile.Read(surroundings.PathOf(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return WrongUse.Write(surroundings.Error, $"{path} can't be read: {Reason.Of(e)}", "Check the name and who may read it.");
        }
        var import = SheetImport.Read(bytes);
        if (import is SheetImport.Refused refused)
        {
            WrongUse.Write(surroundings.Error, $"{path} can't be imported. {refused.Reason}", refused.Remedy);
            return ExitCode.SheetHasErrors;
        }
        var made = (SheetImport.Made)import;
        if (NewSheetFile.Write(surroundings, surroundings.Out, output, Encoding.UTF8.GetBytes(made.Text), replace) is var code and not ExitCode.Fine) return code;
        Report(surroundings, path, output, made);
        return ExitCode.Fine;
    }

    private static void Report(Surroundings surroundings, string path, string output, SheetImport.Made made)
    {
        surroundings.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{output}: {Count(made.Bars, "bar")}, {Count(made.Parts, "part")}."));
        RemarkPrinter.Write(surroundings.Out, made.Remarks);
        if (!made.InFile.IsEmpty) FindingPrinter.Write(surroundings.Error, path, made.InFile, surroundings.Colours);
    }

    private static string Count(int number, string word) => string.Create(CultureInfo.InvariantCulture, $"{number} {word}{(number == 1 ? "" : "s")}");
}
