using System.CommandLine;
using System.Globalization;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Workspace.Exchange;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore export</c>: writes a song for another program.</summary>
internal static class ExportVerb
{
    private static readonly (string Name, string Extension, ExportForm Form)[] Forms =
        [("musicxml", ".musicxml", ExportForm.MusicXml), ("mxl", ".mxl", ExportForm.Mxl), ("midi", ".mid", ExportForm.Midi), ("text", ".txt", ExportForm.Text)];

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore." };
        var form = new Option<string>("--as") { Description = "The form: musicxml, mxl (compressed MusicXML), midi or text (plain-text tab).", Required = true };
        form.AcceptOnlyFromAmong([.. Forms.Select(f => f.Name)]);
        var output = new Option<string?>("--output", "-o") { Description = "The file to make; beside the sheet and with its name when not given.", HelpName = "FILE" };
        var replace = new Option<bool>("--replace") { Description = "Replace the file when it is there already." };
        var (narrowest, widest) = SongExport.Widths;
        var width = new Option<int?>("--width")
        {
            Description = string.Create(CultureInfo.InvariantCulture, $"The most characters in a line of plain-text tab, {narrowest} to {widest}; {SongExport.UsualWidth} when not given."),
            HelpName = "CHARACTERS",
        };
        var verb = new Verb(
            "export", "Write a song for other programs, as MusicXML or MIDI, or for mail and forums as plain-text tab.",
            "fretlore export my-song.lore --as musicxml", "fretlore export my-song.lore --as midi -o my-song.mid --replace", "fretlore export my-song.lore --as text --width 72") { sheet, form, output, width, replace };
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(sheet), parsed.GetRequiredValue(form), parsed.GetValue(output), parsed.GetValue(width), parsed.GetValue(replace)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string sheet, string form, string? output, int? width, bool replace)
    {
        var (_, extension, wanted) = Forms.Single(f => f.Name == form);
        if (width is not null && wanted != ExportForm.Text) return WrongUse.Write(surroundings.Error, "--width is for plain-text tab.", "Leave it out, or export with --as text.");
        var (narrowest, widest) = SongExport.Widths;
        if (width < narrowest || width > widest)
        {
            return WrongUse.Write(
                surroundings.Error, string.Create(CultureInfo.InvariantCulture, $"Tab can't be {width} characters wide."), string.Create(CultureInfo.InvariantCulture, $"Give a --width from {narrowest} to {widest}."));
        }
        if (OpenedSheet.Open(surroundings, sheet, "Nothing was exported", out var code) is not { Workspace: var song }) return code;
        var path = output ?? Path.ChangeExtension(sheet == SheetFile.StandardInput ? "song" : sheet, extension);
        if (OutputPlace.RefuseFile(surroundings, path, replace) is { } refused) return refused;
        try
        {
            var (full, export) = (surroundings.PathOf(path), SongExport.Write(song, wanted, width ?? SongExport.UsualWidth));
            if (SafeFile.TryCreate(full, export.Bytes)) surroundings.Out.WriteLine($"{path} is ready.");
            else if (!replace) return WrongUse.Write(surroundings.Error, $"{path} is already there and was left as it is.", "Choose another name with -o, or replace it with --replace.");
            else
            {
                SafeFile.Replace(full, export.Bytes);
                surroundings.Out.WriteLine($"{path} was there and has been replaced.");
            }
            RemarkPrinter.Write(surroundings.Out, export.Remarks);
            // Tab is what gets posted.
            if (wanted == ExportForm.Text) surroundings.Out.WriteLine("Posting a tab of somebody else's song may need a licence from its publisher.");
            return ExitCode.Fine;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return WrongUse.Write(surroundings.Error, $"{path} can't be written: {Reason.Of(e)}", "Choose another name with -o.");
        }
    }
}
