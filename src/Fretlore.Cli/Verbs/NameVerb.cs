using System.CommandLine;
using System.Text.Json;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Music.Chords;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore name</c>: what a shape is called, and why.</summary>
internal static class NameVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var shape = new Argument<string[]>("SHAPE")
        {
            Description = "A fret for each string from low to high, x where it is not sounded.",
            Arity = ArgumentArity.OneOrMore,
        };
        var tuning = new Option<string?>("--tuning") { Description = "Open strings from low to high; E2 A2 D3 G3 B3 E4 when not given.", HelpName = "PITCHES" };
        var capo = new Option<string?>("--capo") { Description = "The capo's fret, from which the shape's frets count; or fret and strings such as \"2 on 5-3\", where they count from the nut.", HelpName = "FRET" };
        var key = new Option<string?>("--key") { Description = "The key around it, which decides between names and spellings.", HelpName = "KEY" };
        var symbols = PagesVerb.SymbolsOption();
        var json = new Option<bool>("--json") { Description = "Print the names as JSON." };
        var verb = new Verb(
            "name", "Name a shape, best name first, each with its reason.",
            "fretlore name \"x 3 2 0 1 0\"", "fretlore name \"0 0 0 2 3 1\" --tuning \"D2 A2 D3 G3 B3 E4\" --key \"D minor\" --json")
        {
            shape, tuning, capo, key, symbols, json,
        };
        verb.SetAction(parsed =>
        {
            var question = new ChordQuestion(
                string.Join(' ', parsed.GetRequiredValue(shape)), parsed.GetValue(tuning), parsed.GetValue(capo), parsed.GetValue(key));
            return Run(surroundings, question, PagesVerb.StyleOf(parsed.GetRequiredValue(symbols)), parsed.GetValue(json));
        });
        return verb;
    }

    private static int Run(Surroundings surroundings, ChordQuestion question, ChordStyle style, bool asJson)
    {
        var answer = question.Ask();
        if (answer.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        if (question.Caution() is { } caution) surroundings.Error.WriteLine(caution);
        ChordLine[] lines =
        [
            .. answer.Value.Select(c => new ChordLine(
                c.SymbolIn(style), c.Root.ToString(), c.Kind, c.Bass.ToString(), [.. c.Notes.Select(n => n.ToString())], c.Reason)),
        ];
        if (asJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(new NameAnswer(lines), AnswerJson.Readable.NameAnswer));
        else Columns.Write(surroundings.Out, lines.Select(l => (string[])[l.Symbol, string.Join(' ', l.Notes), l.Reason]));
        return ExitCode.Fine;
    }
}
