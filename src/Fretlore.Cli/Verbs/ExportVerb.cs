using System.CommandLine;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Workspace;
using Fretlore.Workspace.Exchange;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore export</c>: writes a song for another program.</summary>
internal static class ExportVerb
{
    private static readonly (string Name, string Extension, ExportForm Form)[] Forms =
        [("musicxml", ".musicxml", ExportForm.MusicXml), ("mxl", ".mxl", ExportForm.Mxl), ("midi", ".mid", ExportForm.Midi)];

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore." };
        var form = new Option<string>("--as") { Description = "The form: musicxml, mxl (compressed MusicXML) or midi.", Required = true };
        form.AcceptOnlyFromAmong([.. Forms.Select(f => f.Name)]);
        var output = new Option<string?>("--output", "-o") { Description = "The file to make; beside the sheet and with its name when not given.", HelpName = "FILE" };
        var replace = new Option<bool>("--replace") { Description = "Replace the file when it is there already." };
        var verb = new Verb(
            "export", "Write a song for other programs, as MusicXML or MIDI.",
            "fretlore export my-song.lore --as musicxml", "fretlore export my-song.lore --as midi -o my-song.mid --replace") { sheet, form, output, replace };
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(sheet), parsed.GetRequiredValue(form), parsed.GetValue(output), parsed.GetValue(replace)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string sheet, string form, string? output, bool replace)
    {
        var file = SheetFile.Read(surroundings, sheet);
        if (file.Wrong is not null)
        {
            FindingPrinter.Write(surroundings.Error, sheet, file.Findings, surroundings.Colours);
            return file.ExitCode;
        }
        var song = SongWorkspace.Open(file.Text);
        FindingPrinter.Write(surroundings.Error, sheet, song.Findings, surroundings.Colours);
        if (song.HasErrors || song.Song is null)
        {
            surroundings.Error.WriteLine($"Nothing was exported: {FindingPrinter.Count(song.Findings)} in {sheet}.");
            return ExitCode.SheetHasErrors;
        }
        var (_, extension, wanted) = Forms.Single(f => f.Name == form);
        var path = output ?? Path.ChangeExtension(sheet == SheetFile.StandardInput ? "song" : sheet, extension);
        try
        {
            var (full, bytes) = (surroundings.PathOf(path), SongExport.Write(song, wanted));
            if (Directory.Exists(full)) return WrongUse.Write(surroundings.Error, $"{path} is a folder.", "Give the file to make with -o.");
            if (SafeFile.TryCreate(full, bytes))
            {
                surroundings.Out.WriteLine($"{path} is ready.");
                return ExitCode.Fine;
            }
            if (!replace) return WrongUse.Write(surroundings.Error, $"{path} is already there and was left as it is.", "Choose another name with -o, or replace it with --replace.");
            SafeFile.Replace(full, bytes);
            surroundings.Out.WriteLine($"{path} was there and has been replaced.");
            return ExitCode.Fine;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return WrongUse.Write(surroundings.Error, $"{path} can't be written: {Reason.Of(e)}", "Choose another name with -o.");
        }
    }
}
