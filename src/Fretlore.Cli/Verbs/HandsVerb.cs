using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Fretlore.Cli.Files;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Fingers;
using Fretlore.Score;
using Fretlore.Workspace.Hands;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore hands</c>: which finger plays what, how hard each bar is and why.</summary>
internal static class HandsVerb
{
    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var part = new Option<string?>("--part") { Description = "The parts to print, with commas between them; all when not given.", HelpName = "NAMES" };
        var hand = new Option<string>("--hand") { Description = "small, average or large.", HelpName = "SIZE", DefaultValueFactory = _ => "average" };
        var thumb = new Option<bool>("--thumb") { Description = "Let the thumb come over the neck to the two lowest strings." };
        var json = new Option<bool>("--json") { Description = "Print the plan as JSON." };
        var verb = new Verb(
            "hands", "Say which finger plays what, how hard each bar is and why.",
            "fretlore hands my-song.lore", "fretlore hands my-song.lore --part lead --hand small --json") { sheet, part, hand, thumb, json };
        verb.SetAction(parsed => Run(
            surroundings, parsed.GetRequiredValue(sheet), parsed.GetValue(part), parsed.GetRequiredValue(hand), parsed.GetValue(thumb), parsed.GetValue(json)));
        return verb;
    }

    private static int Run(Surroundings surroundings, string path, string? partNames, string handSize, bool usesThumb, bool asJson)
    {
        var hand = HandText.Read(handSize);
        if (hand.Misread is { } noHand) return WrongUse.Write(surroundings.Error, noHand);
        if (OpenedSheet.Open(surroundings, path, "No hands were planned", out var code) is not var (workspace, song)) return code;
        var chosen = PartChoice.Read(partNames, song);
        if (chosen.Misread is { } noPart) return WrongUse.Write(surroundings.Error, noPart);
        int[] parts = chosen.Value.Count == 0 ? [.. Enumerable.Range(0, song.Parts.Count)] : [.. chosen.Value];
        var view = workspace.PlanHands(new PlayingHand(hand.Value, usesThumb));
        if (asJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(Answer(song, view, parts), AnswerJson.Readable.HandsAnswer));
        else Write(surroundings, path, song, view, parts);
        return ExitCode.Fine;
    }

    private static void Write(Surroundings surroundings, string path, Song song, HandsView view, int[] parts)
    {
        var output = surroundings.Out;
        var data = HandData.Of(song, view.Plan, parts);
        for (var i = 0; i < parts.Length; i++)
        {
            output.WriteLine($"{song.Parts[parts[i]].Title}: {data.Parts[i].Difficulty}");
            Columns.Write(output, data.Parts[i].Bars
                .Where(bar => bar.Difficulty != BarOfHands.Word(Difficulty.None))
                .Select(bar => (string[])[$"  bar {bar.Bar}", bar.Difficulty, Fingers(bar), Picking(bar), string.Join("; ", bar.Reasons)]));
        }
        if (view.Plan.Riffs.Length > 0) output.WriteLine("Riffs:");
        Columns.Write(output, view.Plan.Riffs.Select(riff => (string[])["  " + riff.Name, BarOfHands.Word(riff.Whole.Difficulty), string.Join("; ", riff.Whole.Reasons)]));
        var others = data.Riffs.Where(riff => riff.Alternatives is { Count: > 0 }).ToList();
        if (others.Count > 0) output.WriteLine("Other ways to play them (string:fret, or fingers):");
        foreach (var riff in others)
        {
            foreach (var way in riff.Alternatives!)
            {
                output.WriteLine($"  {riff.Name} {way.Sentence()}");
                output.WriteLine($"    {way.Places()}");
            }
        }
        FindingPrinter.Write(output, path, view.Findings, surroundings.Colours);
        output.WriteLine(HandData.Cautions);
    }

    private static HandsAnswer Answer(Song song, HandsView view, int[] parts)
    {
        var data = HandData.Of(song, view.Plan, parts);
        return new HandsAnswer(
            data.Hand, data.Parts, data.Riffs,
            [.. view.Findings.Select(f => new DiagnosticLine(f.Code, FindingPrinter.SeverityWord(f.Severity), f.Line, f.Column, f.Length, f.Message, f.Remedy))], data.Caution);
    }

    // For example "1 4 [1 3 4] -": an open or free note is a dash, what sounds together stands in brackets, low string first.
    private static string Fingers(BarOfHands bar) => string.Join(' ', bar.Notes
        .GroupBy(note => note.At)
        .Select(group => group.Select(note => note.Finger?.ToString(CultureInfo.InvariantCulture) ?? "-").ToList())
        .Select(fingers => fingers.Count == 1 ? fingers[0] : $"[{string.Join(' ', fingers)}]"));

    // For example "d u - d" or "p i m a": a dash where nothing is plucked.
    private static string Picking(BarOfHands bar) => string.Join(' ', bar.Notes
        .GroupBy(note => note.At)
        .Select(group => string.Concat(group.Select(note => note.Picking switch { "down" => "d", "up" => "u", null => "-", var finger => finger }).Distinct()))
        .Select(letters => letters.Length > 1 ? letters.Replace("-", "", StringComparison.Ordinal) : letters));
}
