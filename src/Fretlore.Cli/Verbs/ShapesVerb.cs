using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore shapes</c>: the ways to play a chord in a tuning.</summary>
internal static class ShapesVerb
{
    private const int UsualCount = 12;

    public static Verb Make(Surroundings surroundings)
    {
        var chord = new Argument<string>("CHORD") { Description = "A chord symbol, such as F#m11, D/F# or Bbmaj7#11." };
        var tuning = new Option<string?>("--tuning") { Description = "Open strings from low to high; E2 A2 D3 G3 B3 E4 when not given.", HelpName = "PITCHES" };
        var capo = new Option<string?>("--capo") { Description = "The capo's fret, or fret and strings such as \"2 on 5-3\", where frets count from the nut; the chord is what sounds.", HelpName = "FRET" };
        var from = new Option<int?>("--from") { Description = "The fret your index finger is at now: near shapes come first.", HelpName = "FRET" };
        var hand = new Option<string>("--hand") { Description = "small, average or large.", HelpName = "SIZE", DefaultValueFactory = _ => "average" };
        var most = new Option<int>("--most") { Description = "How many shapes to print; 0 for all.", HelpName = "COUNT", DefaultValueFactory = _ => UsualCount };
        var json = new Option<bool>("--json") { Description = "Print the shapes as JSON." };
        var verb = new Verb(
            "shapes", "Find the shapes that play a chord, easiest and most complete first.",
            "fretlore shapes \"F#m11\" --tuning \"E2 A2 D3 G3 B3 E4\"", "fretlore shapes \"D/F#\" --tuning \"D2 A2 D3 G3 A3 D4\" --from 5 --json")
        {
            chord, tuning, capo, from, hand, most, json,
        };
        verb.SetAction(parsed =>
        {
            var question = new ShapesQuestion(
                parsed.GetRequiredValue(chord), parsed.GetValue(tuning), parsed.GetValue(capo), parsed.GetValue(from), parsed.GetRequiredValue(hand));
            return Run(surroundings, question, parsed.GetValue(most), parsed.GetValue(json));
        });
        return verb;
    }

    private static int Run(Surroundings surroundings, ShapesQuestion question, int most, bool asJson)
    {
        if (most < 0) return WrongUse.Write(surroundings.Error, "There can't be fewer shapes than none.", "Give --most a number from 0 (all) up.");
        var answer = question.Ask();
        if (answer.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        var (name, choices) = answer.Value;
        ShapeLine[] lines =
        [
            .. choices.Take(most == 0 ? choices.Length : most).Select(choice => new ShapeLine(
                choice.Shape.ToString(), string.Join(' ', choice.LowToHigh.Select((f, i) => f is { } finger
                    ? ((int)finger).ToString(CultureInfo.InvariantCulture)
                    : choice.Shape.LowToHigh[i] is null ? "x" : "0")),
                choice.Position, choice.Words(name), Math.Round(choice.Effort, 2), Math.Round(choice.Lack, 2))),
        ];
        if (asJson)
        {
            surroundings.Out.WriteLine(JsonSerializer.Serialize(new ShapesAnswer(name.Symbol(), choices.Length, lines), AnswerJson.Readable.ShapesAnswer));
            return ExitCode.Fine;
        }
        if (choices.Length == 0)
        {
            surroundings.Out.WriteLine($"No hand holds {name.Symbol()} in this tuning.");
            return ExitCode.Fine;
        }
        Columns.Write(surroundings.Out, lines
            .Select(l => (string[])[l.Shape, l.Fingers, $"position {l.Position}", l.About])
            .Prepend(["shape", "fingers", "", ""]));
        if (lines.Length < choices.Length) surroundings.Out.WriteLine($"… and {choices.Length - lines.Length} more; see them with --most 0.");
        return ExitCode.Fine;
    }
}
