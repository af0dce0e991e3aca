using System.CommandLine;
using System.Text.Json;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore scale</c>: which scales some notes come from, and why.</summary>
internal static class ScaleVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var notes = new Argument<string[]>("NOTES") { Description = "Note names in the order played.", Arity = ArgumentArity.OneOrMore };
        var root = new Option<string?>("--root") { Description = "The root, when it is known.", HelpName = "NOTE" };
        var json = new Option<bool>("--json") { Description = "Print the scales as JSON." };
        var verb = new Verb(
            "scale", "Find the scales some notes come from, best first, each with its reason.",
            "fretlore scale \"A C D E G\" --root A", "fretlore scale \"E F G# A B\" --json") { notes, root, json };
        verb.SetAction(parsed => Run(
            surroundings, new ScaleQuestion(string.Join(' ', parsed.GetRequiredValue(notes)), parsed.GetValue(root)), parsed.GetValue(json)));
        return verb;
    }

    private static int Run(Surroundings surroundings, ScaleQuestion question, bool asJson)
    {
        var answer = question.Ask();
        if (answer.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        ScaleLine[] lines =
        [
            .. answer.Value.Select(s => new ScaleLine(
                s.Name, s.Root.ToString(), [.. s.Missing.Select(n => n.ToString())], [.. s.Outside.Select(n => n.ToString())], s.Reason)),
        ];
        if (asJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(new ScaleAnswer(lines), AnswerJson.Readable.ScaleAnswer));
        else Columns.Write(surroundings.Out, lines.Select(l => (string[])[$"{l.Root} {l.Name}", Difference(l), l.Reason]));
        return ExitCode.Fine;
    }

    private static string Difference(ScaleLine line)
    {
        var words = new List<string>();
        if (line.Missing.Count > 0) words.Add("without " + string.Join(' ', line.Missing));
        if (line.Outside.Count > 0) words.Add("plus " + string.Join(' ', line.Outside));
        return words.Count == 0 ? "exactly" : string.Join(", ", words);
    }
}
