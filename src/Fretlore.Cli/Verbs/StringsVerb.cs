using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore strings</c>: gauges for a tuning, what they pull, and what to be careful about.</summary>
internal static class StringsVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var tuning = new Option<string?>("--tuning") { Description = "Open strings from low to high; E2 A2 D3 G3 B3 E4 when not given.", HelpName = "PITCHES" };
        var length = new Option<string>("--scale-length") { Description = "Nut to bridge, such as 25.5in or 648mm; two for a fanned neck, high string first: 25.5in-27in.", HelpName = "LENGTH", DefaultValueFactory = _ => "25.5in" };
        var feel = new Option<string>("--feel") { Description = "even, light, regular or heavy, or a tension for every string such as 16lbf or 72N.", HelpName = "FEEL", DefaultValueFactory = _ => "even" };
        var gauges = new Option<string?>("--gauges") { Description = "The strings to use instead, low to high: \"46w 36w 26w 17 13 10\".", HelpName = "GAUGES" };
        var now = new Option<string?>("--now") { Description = "The strings on the guitar now, low to high; a usual set when not given.", HelpName = "GAUGES" };
        var nowTuning = new Option<string?>("--now-tuning") { Description = "What the guitar is tuned to now; the usual tuning when not given.", HelpName = "PITCHES" };
        var json = new Option<bool>("--json") { Description = "Print the strings as JSON." };
        var verb = new Verb(
            "strings", "Choose string gauges for a tuning and say what they pull, before and after.",
            "fretlore strings --tuning \"D2 A2 D3 G3 A3 D4\" --scale-length 25.5in --feel even",
            "fretlore strings --tuning \"B1 E2 A2 D3 F#3 B3\" --gauges \"46w 36w 26w 17 13 10\" --now-tuning \"E2 A2 D3 G3 B3 E4\"")
        {
            tuning, length, feel, gauges, now, nowTuning, json,
        };
        verb.SetAction(parsed => Run(
            surroundings,
            new StringsQuestion(
                parsed.GetValue(tuning), parsed.GetRequiredValue(length), parsed.GetRequiredValue(feel), parsed.GetValue(gauges), parsed.GetValue(now),
                parsed.GetValue(nowTuning)),
            parsed.GetValue(json)));
        return verb;
    }

    private static int Run(Surroundings surroundings, StringsQuestion question, bool asJson)
    {
        var answer = question.Ask();
        if (answer.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        var advice = answer.Value;
        if (asJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(Lines(advice), AnswerJson.Readable.StringsAnswer));
        else Write(surroundings.Out, advice);
        return ExitCode.Fine;
    }

    private static StringsAnswer Lines(StringsAdvice advice)
    {
        var strings = advice.Set.Strings.Select((s, i) =>
        {
            var before = advice.Before?.Strings[i].Tension;
            return new StringLine(
                s.Number.Value, s.Pitch.ToString(), s.Gauge.ToString(), s.Gauge.Make.ToString().ToLowerInvariant(),
                Round(s.Tension.PoundsForce), Round(s.Tension.Newtons), Round(before?.PoundsForce), Round(before?.Newtons), Round(s.ShareOfBreaking),
                s.Inharmonicity, Round(s.WholeStepBend?.Newtons), Round(s.WholeStepBend?.Millimetres));
        });
        return new StringsAnswer(
            [.. strings], Round(advice.Set.Load.PoundsForce), Round(advice.Set.Load.Newtons), Round(advice.Before?.Load.PoundsForce), advice.BeforeWords,
            advice.Feel?.Name, [.. advice.Remarks.Select(r => new RemarkLine(JsonNamingPolicy.CamelCase.ConvertName(r.Concern.ToString()), r.Text))]);
    }

    private static void Write(TextWriter output, StringsAdvice advice)
    {
        if (advice.Feel is { } feel) output.WriteLine($"Feel: {feel.Name}, {feel.Meaning}.");
        var hasBefore = advice.Before is not null;
        var rows = new List<string[]> { Row(hasBefore, "string", "note", "gauge", "lbf", "N", "before lbf", "of breaking", "whole-step bend at fret 12") };
        foreach (var (s, i) in advice.Set.Strings.Select((s, i) => (s, i)))
        {
            rows.Add(Row(
                hasBefore, Text(s.Number.Value, "0"), s.Pitch.ToString(), s.Gauge.ToString(), Text(s.Tension.PoundsForce, "0.0"), Text(s.Tension.Newtons, "0.0"),
                hasBefore ? Text(advice.Before!.Strings[i].Tension.PoundsForce, "0.0") : "",
                s.ShareOfBreaking is { } share ? Text(share * 100, "0") + "%" : "-",
                s.WholeStepBend is { } bend ? $"{Text(bend.Newtons, "0.0")} N over {Text(bend.Millimetres, "0")} mm" : "-"));
        }
        var load = advice.Set.Load;
        rows.Add(Row(
            hasBefore, "neck", "", "", Text(load.PoundsForce, "0.0"), Text(load.Newtons, "0.0"),
            hasBefore ? Text(advice.Before!.Load.PoundsForce, "0.0") : "", "", ""));
        Columns.Write(output, rows);
        if (advice.BeforeWords is { } words) output.WriteLine($"Before: {words}.");
        foreach (var remark in advice.Remarks) output.WriteLine($"Careful: {remark.Text}");
    }

    private static string[] Row(
        bool hasBefore, string number, string pitch, string gauge, string pounds, string newtons, string before, string breaking, string bend) => hasBefore
        ? [number, pitch, gauge, pounds, newtons, before, breaking, bend]
        : [number, pitch, gauge, pounds, newtons, breaking, bend];

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static double Round(double value) => Math.Round(value, 2);

    private static double? Round(double? value) => value is { } some ? Math.Round(some, 2) : null;
}
