using System.CommandLine;
using System.Text.Json;
using Fretlore.Cli.Files;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Workspace;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore check</c>: says what is wrong with a sheet and what to do about it.</summary>
internal static class CheckVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var json = new Option<bool>("--json") { Description = "Print the findings as JSON." };
        var verb = new Verb(
            "check", "Say what is wrong with a sheet and what to do about it. Answers 0 when it has no errors, 1 when it has.",
            "fretlore check my-song.lore", "fretlore check my-song.lore --json") { sheet, json };
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(sheet), parsed.GetValue(json)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string path, bool asJson)
    {
        var file = SheetFile.Read(surroundings, path);
        var findings = file.Findings;
        var code = file.ExitCode;
        if (file.Wrong is null)
        {
            var song = SongWorkspace.Open(file.Text);
            findings = song.Check();
            code = song.HasErrors ? ExitCode.SheetHasErrors : ExitCode.Fine;
        }
        if (asJson)
        {
            var lines = findings.Select(f => new DiagnosticLine(
                f.Code, FindingPrinter.SeverityWord(f.Severity), f.Line, f.Column, f.Length, f.Message, f.Remedy));
            surroundings.Out.WriteLine(JsonSerializer.Serialize(new CheckAnswer([.. lines]), AnswerJson.Readable.CheckAnswer));
            return code;
        }
        FindingPrinter.Write(surroundings.Out, path, findings, surroundings.Colours);
        surroundings.Out.WriteLine($"{path}: {FindingPrinter.Count(findings)}");
        return code;
    }
}
