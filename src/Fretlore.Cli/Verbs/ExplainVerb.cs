using System.CommandLine;
using System.Text.Json;
using Fretlore.Cli.Files;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Workspace.Explanation;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore explain</c>: says what the music of a sheet is, and why.</summary>
internal static class ExplainVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var bar = new Option<int?>("--bar") { Description = "Only the bar with this printed number.", HelpName = "N" };
        var json = new Option<bool>("--json") { Description = "Print the explanation as JSON." };
        var verb = new Verb(
            "explain", "Say what the music is: keys, scales, chords with numerals, and what each note does, each with its reason.",
            "fretlore explain my-song.lore", "fretlore explain my-song.lore --bar 9 --json") { sheet, bar, json };
        verb.SetAction(parsed => Run(surroundings, parsed.GetRequiredValue(sheet), parsed.GetValue(bar), parsed.GetValue(json)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string path, int? bar, bool asJson)
    {
        if (OpenedSheet.Open(surroundings, path, "Nothing was explained", out var code) is not var (workspace, song)) return code;
        var answer = Explainer.Explain(song, workspace.Reading, workspace.Hands, bar);
        if (answer.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        if (asJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(answer.Value, AnswerJson.Readable.SongExplanation));
        else ExplanationPrinter.Write(surroundings.Out, answer.Value);
        return ExitCode.Fine;
    }
}
