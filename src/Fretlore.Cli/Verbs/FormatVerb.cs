using System.CommandLine;
using System.Text;
using Fretlore.Cli.Files;
using Fretlore.Cli.Output;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore format</c>: sets a sheet out evenly without changing its music.</summary>
internal static class FormatVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - formats the standard input to the standard output." };
        var check = new Option<bool>("--check") { Description = "Change nothing; answer 1 when the sheet would change." };
        var verb = new Verb(
            "format", "Set a sheet out evenly: time and place restated at each bar, columns aligned. The music stays as it is.",
            "fretlore format my-song.lore", "fretlore format my-song.lore --check") { sheet, check };
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(sheet), parsed.GetValue(check)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string path, bool checkOnly)
    {
        var file = SheetFile.Read(surroundings, path);
        if (file.Wrong is not null)
        {
            FindingPrinter.Write(surroundings.Error, path, file.Findings, surroundings.Colours);
            return file.ExitCode;
        }
        var before = file.Text.Text;
        var sheet = Sheet.Parse(file.Text);
        var (after, isRefused) = SheetFormat.Format(sheet);
        if (isRefused)
        {
            Finding[] errors = [.. sheet.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => Finding.Of(d, file.Text))];
            FindingPrinter.Write(surroundings.Error, path, errors, surroundings.Colours);
            surroundings.Error.WriteLine($"{path} was left as it is: {FindingPrinter.Count(errors)} to mend first.");
            return ExitCode.SheetHasErrors;
        }
        if (checkOnly)
        {
            surroundings.Out.WriteLine(after == before ? $"{path} is formatted." : $"{path} would change: fretlore format {path}");
            return after == before ? ExitCode.Fine : ExitCode.SheetHasErrors;
        }
        if (path == SheetFile.StandardInput)
        {
            surroundings.Out.Write(after);
            return ExitCode.Fine;
        }
        if (after == before)
        {
            surroundings.Out.WriteLine($"{path} is formatted already.");
            return ExitCode.Fine;
        }
        try
        {
            SafeFile.Replace(surroundings.PathOf(path), Encoding.UTF8.GetBytes(after));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return WrongUse.Write(surroundings.Error, $"{path} can't be written: {Reason.Of(e)}", "It was left as it is. Check who may write it.");
        }
        surroundings.Out.WriteLine($"{path} is formatted.");
        return ExitCode.Fine;
    }
}
