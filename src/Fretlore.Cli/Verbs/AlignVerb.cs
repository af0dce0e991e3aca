using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Fretlore.Cli.Files;
using Fretlore.Cli.Json;
using Fretlore.Cli.Output;
using Fretlore.Workspace.Listening;
using Fretlore.Workspace.Questions;

namespace Fretlore.Cli.Verbs;

/// <summary><c>fretlore align</c>: finds when the sheet's bars begin in a take.</summary>
internal static class AlignVerb
{
    // In tune is what nobody would tune again.
    private const double InTune = 8;

    private sealed record Wish(string Sheet, string Take, string? Name, string? Part, bool Writes, bool AsJson);

    public static Verb Make(Surroundings surroundings)
    {
        var sheet = new Argument<string>("SHEET") { Description = "The sheet, NAME.lore; - reads it from the standard input." };
        var take = new Argument<string>("TAKE") { Description = "A recording of the whole song, as WAV." };
        var part = new Option<string?>("--part") { Description = "The parts that are heard in it, with commas between them; all of them when not given.", HelpName = "NAMES" };
        var name = new Option<string?>("--name") { Description = "The file's name for the sheet, such as that of the compressed file you hand out; the take's own when not given.", HelpName = "FILE" };
        var write = new Option<bool>("--write") { Description = "Write the times into the sheet; those it has for a file of this name are replaced." };
        var json = new Option<bool>("--json") { Description = "Print when every bar begins as JSON." };
        var verb = new Verb(
            "align", "Find by ear when each bar of a song begins in a recording, for students to play along with on the practice page.",
            "fretlore align my-song.lore take-3.wav --write", "fretlore align my-song.lore lead-alone.wav --part lead --json") { sheet, take, part, name, write, json };
        verb.SetAction(parsed => Run(surroundings, new Wish(
            parsed.GetRequiredValue(sheet), parsed.GetRequiredValue(take), parsed.GetValue(name), parsed.GetValue(part), parsed.GetValue(write), parsed.GetValue(json))));
        return verb;
    }

    private static int Run(Surroundings surroundings, Wish wish)
    {
        if (wish.Writes && wish.Sheet == SheetFile.StandardInput) return WrongUse.Write(surroundings.Error, "Times can't be written into the standard input.", "Leave --write out, or name the sheet's file.");
        var name = wish.Name ?? Path.GetFileName(wish.Take);
        if (name.Length == 0 || name.Any(c => c is '"' || char.IsControl(c))) return WrongUse.Write(surroundings.Error, "A sheet can't say that file name.", "Give one without quotes with --name.");
        if (OpenedSheet.Open(surroundings, wish.Sheet, "Nothing was listened to", out var code) is not { } opened) return code;
        var parts = PartChoice.Read(wish.Part, opened.Song);
        if (parts.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        if (Listen(surroundings, wish.Take, new TakeQuestion(name, parts.Value.Items), opened, out code) is not { } take) return code;
        if (wish.Writes && Write(surroundings, wish.Sheet, take) is { } failed) return failed;
        if (wish.AsJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(Answer(name, take), AnswerJson.Readable.AlignedTakeJson));
        else if (!wish.Writes) surroundings.Out.Write(take.Block);
        Report(wish.Writes && !wish.AsJson ? surroundings.Out : surroundings.Error, wish, name, take);
        return ExitCode.Fine;
    }

    private static LinedUpTake? Listen(Surroundings surroundings, string path, TakeQuestion question, OpenedSheet opened, out int code)
    {
        using var stop = new StopSignal();
        try
        {
            using var file = new FileStream(surroundings.PathOf(path), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            var answer = question.Ask(opened.Workspace, file, stop.Token);
            code = answer is TakeAnswer.Refused refused ? WrongUse.Write(surroundings.Error, refused.Message, refused.Remedy) : ExitCode.Fine;
            return (answer as TakeAnswer.Found)?.Take;
        }
        catch (OperationCanceledException)
        {
            surroundings.Error.WriteLine("Stopped: nothing was written.");
            code = ExitCode.Stopped;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            code = WrongUse.Write(surroundings.Error, $"{path} can't be read: {Reason.Of(e)}", "Name a WAV file.");
        }
        return null;
    }

    private static int? Write(Surroundings surroundings, string path, LinedUpTake take)
    {
        try
        {
            SafeFile.Replace(surroundings.PathOf(path), Encoding.UTF8.GetBytes(take.Sheet));
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return WrongUse.Write(surroundings.Error, $"{path} can't be written: {Reason.Of(e)}", "It was left as it is. Check who may write it.");
        }
    }

    private static void Report(TextWriter report, Wish wish, string name, LinedUpTake take)
    {
        var found = take.Bars.Where(bar => bar.At is not null).ToList();
        report.WriteLine(Say($"{name}: {found.Count} of {take.Bars.Length} bars are in it, from {Time(found[0].At!.Value)} on; {take.Recording.Bars.Count} times say where."));
        if (Math.Abs(take.TuningCents) > InTune) report.WriteLine(Say($"It is tuned about {Math.Abs(take.TuningCents):0} cents {(take.TuningCents > 0 ? "above" : "below")} A4 = 440."));
        if (take.SoundsUnlike) report.WriteLine("It does not sound much like the sheet: listen to some bars before you trust these times. Other instruments, or other music, may be in it.");
        else if (take.OddBars.ToList() is { Count: > 0 } odd)
        {
            report.WriteLine($"{(odd.Count == 1 ? "This bar sounds" : "These bars sound")} unlike the sheet: {string.Join(", ", odd.Select(Words))}. Listen to them.");
        }
        if (wish.Writes) report.WriteLine($"The times are in {wish.Sheet}.");
        report.WriteLine("Publishing a recording may need the consent of all who made it.");
    }

    private static string Words(LinedUpBar bar) => Say($"{bar.Number}{(bar.Time > 1 ? Say($" time {bar.Time}") : "")} at {Time(bar.At!.Value)}");

    private static string Time(TimeSpan at) => Say($"{(int)at.TotalMinutes}:{at:ss\\.ff}");

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static AlignedTakeJson Answer(string name, LinedUpTake take) => new(
        name, Math.Round(take.Unlike, 2), take.TuningCents,
        [.. take.Bars.Select(bar => new AlignedBarLine(bar.Number, bar.Time, bar.At?.TotalSeconds, Math.Round(bar.Unlike, 2)))]);
}
