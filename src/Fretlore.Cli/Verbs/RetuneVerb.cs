using System.Globalization;
using System.CommandLine;
using System.Text;
using System.Text.Json;
using Fretlore.Cli.Files;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Hands.Retuning;
using Fretlore.Workspace.Questions;
using Fretlore.Workspace.Retuning;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore retune</c>: a sheet for another tuning, and what is lost on the way.</summary>
internal static class RetuneVerb
{
    private sealed record Wish(string Path, RetuneQuestion Question, string? Output, bool Replaces, bool AsJson);

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var to = new Option<string>("--to") { Description = "The new open strings from low to high.", HelpName = "PITCHES", Required = true };
        var output = new Option<string?>("--output", "-o") { Description = "The sheet to make; the standard output when not given.", HelpName = "NAME.lore" };
        var part = new Option<string?>("--part") { Description = "The parts to retune, with commas between them; those tuned as the first part is when not given.", HelpName = "NAMES" };
        var transpose = new Option<int>("--transpose") { Description = "Move the whole song by so many semitones, down with a minus.", HelpName = "SEMITONES" };
        var capo = new Option<string?>("--capo") { Description = "Put the capo at this fret, 0 for none, or at a fret of some strings such as \"2 on 5-3\"; it stays where it is when not given.", HelpName = "FRET" };
        var hand = new Option<string>("--hand") { Description = "small, average or large.", HelpName = "SIZE", DefaultValueFactory = _ => "average" };
        var replace = new Option<bool>("--replace") { Description = "Replace the new sheet when it is there already." };
        var json = new Option<bool>("--json") { Description = "Print what was lost as JSON." };
        var verb = new Verb(
            "retune", "Write a sheet for another tuning or number of strings, and say per bar what is lost.",
            "fretlore retune my-song.lore --to \"E2 A2 D3 G3 B3 E4\" -o my-song-standard.lore",
            "fretlore retune my-song.lore --to \"D2 G2 C3 F3 A3 D4\" --transpose -2 --json") { sheet, to, output, part, transpose, capo, hand, replace, json };
        verb.SetAction(parsed =>
        {
            var size = HandText.Read(parsed.GetRequiredValue(hand));
            if (size.Misread is { } noHand) return WrongUse.Write(surroundings.Error, noHand);
            var question = new RetuneQuestion(parsed.GetRequiredValue(to), parsed.GetValue(part), parsed.GetValue(transpose), parsed.GetValue(capo), size.Value);
            return Run(surroundings, new Wish(parsed.GetRequiredValue(sheet), question, parsed.GetValue(output), parsed.GetValue(replace), parsed.GetValue(json)));
        });
        return verb;
    }

    private static int Run(Surroundings surroundings, Wish wish)
    {
        var output = wish.Output;
        if (output is not null && !output.EndsWith(".lore", StringComparison.OrdinalIgnoreCase))
        {
            return WrongUse.Write(surroundings.Error, $"A sheet's name ends in .lore, and {output} doesn't.", "Choose another name with -o.");
        }
        if (OpenedSheet.Open(surroundings, wish.Path, "Nothing was retuned", out var code) is not { } opened) return code;
        if (output is not null && OutputPlace.RefuseFile(surroundings, output, wish.Replaces) is { } unfit) return unfit;
        var answer = wish.Question.Ask(opened.Workspace);
        if (answer.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        var retuned = answer.Value;
        if (output is not null && NewSheetFile.Write(surroundings, wish.AsJson ? surroundings.Error : surroundings.Out, output, Encoding.UTF8.GetBytes(retuned.Sheet), wish.Replaces) is var failed and not ExitCode.Fine) return failed;
        if (wish.AsJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(Answer(retuned, output is null), AnswerJson.Readable.RetuneJson));
        else
        {
            // The sheet goes on alone where it can be piped into a file.
            if (output is null) surroundings.Out.Write(retuned.Sheet);
            Write(output is null ? surroundings.Error : surroundings.Out, retuned, output ?? "the new sheet");
            FindingPrinter.Write(surroundings.Error, output ?? "the new sheet", retuned.Findings, surroundings.Colours);
        }
        return retuned.Findings.Any(finding => finding.Severity == Syntax.Severity.Error) ? ExitCode.SheetHasErrors : ExitCode.Fine;
    }

    private static void Write(TextWriter report, RetuneAnswer retuned, string name)
    {
        var moved = retuned.Order.Semitones == 0 ? "" : $", {RetuneQuestion.Words(retuned.Order.Semitones)}";
        report.WriteLine($"{name}: {retuned.Order.To}{moved}.");
        foreach (var part in retuned.Parts)
        {
            if (!part.IsRetuned && part.Losses.IsEmpty)
            {
                report.WriteLine($"{part.Title}: keeps {part.Neck.Tuning}.");
                continue;
            }
            var hands = part.Before == part.After ? $"as hard as before ({Word(part.After)})" : $"{Word(part.After)} for the hands, {Word(part.Before)} before";
            report.WriteLine($"{part.Title}: {(part.Losses.IsEmpty ? "nothing is lost" : "this is lost")}; {hands}.");
            WriteLosses(report, part.InWords);
        }
        foreach (var riff in retuned.Riffs)
        {
            report.WriteLine($"Riff {riff.Name}, which no part plays:");
            WriteLosses(report, riff.InWords);
        }
        foreach (var remark in retuned.Remarks) report.WriteLine(remark);
        foreach (var offer in retuned.Offers) report.WriteLine(Say(offer, retuned.Order));
    }

    private static void WriteLosses(TextWriter report, IEnumerable<(string Bars, string Text)> losses)
    {
        foreach (var (bars, text) in losses) report.WriteLine($"  {bars}: {text}");
    }

    private static string Say(RetuneOffer offer, RetuneOrder order)
    {
        var lost = offer.Losses switch
        {
            0 => "nothing is lost",
            1 => "one thing is lost",
            _ => string.Create(CultureInfo.InvariantCulture, $"{offer.Losses} things are lost"),
        };
        return offer.Order.Semitones != order.Semitones
            ? string.Create(CultureInfo.InvariantCulture, $"With the whole song {RetuneQuestion.Words(offer.Order.Semitones)}, {lost}: --transpose {offer.Order.Semitones}")
            : string.Create(CultureInfo.InvariantCulture, $"With {(offer.Order.Capo is { IsOff: false } capo ? $"the {capo.Words}" : "no capo")}, {lost}: --capo {offer.Order.Capo?.Fret}");
    }

    private static RetuneJson Answer(RetuneAnswer retuned, bool withSheet) => new(
        retuned.Order.To.ToString(), retuned.Order.Semitones,
        [.. retuned.Parts.Select(part => new RetunedPartLine(part.Name, part.Neck.Tuning.ToString(), part.Neck.Capo.Fret, part.Neck.Capo.IsPartial ? part.Neck.Capo.Strings : null, part.IsRetuned, Word(part.Before), Word(part.After), Losses(part.Losses)))],
        [.. retuned.Riffs.Select(riff => new RetunedRiffLine(riff.Name, Losses(riff.Losses)))],
        [.. retuned.Offers.Select(offer => new RetuneOfferLine(offer.Order.Semitones, offer.Order.Capo?.Fret, offer.Losses))],
        retuned.Remarks,
        [.. retuned.Findings.Select(f => new DiagnosticLine(f.Code, FindingPrinter.SeverityWord(f.Severity), f.Line, f.Column, f.Length, f.Message, f.Remedy))],
        withSheet ? retuned.Sheet : null);

    private static IReadOnlyList<LossOfBar> Losses(IEnumerable<LossLine> losses) =>
        [.. losses.Select(loss => new LossOfBar(loss.Bar, JsonNamingPolicy.CamelCase.ConvertName(loss.Kind.ToString()), loss.Text))];

    private static string Word(Fretlore.Hands.Plans.Difficulty difficulty) => difficulty.ToString().ToLowerInvariant();
}
