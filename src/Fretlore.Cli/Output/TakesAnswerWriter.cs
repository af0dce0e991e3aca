using System.Globalization;
using System.Text.Json;
using Fretlore.Cli.Files;
using Fretlore.Cli.Json;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Takes;
using Fretlore.Workspace;
using Fretlore.Workspace.RoadMaps;

namespace Fretlore.Cli.Output;

/// <summary>What <c>roadmap</c> was asked for.</summary>
/// <param name="Sheet">As typed.</param>
/// <param name="Question">The takes.</param>
/// <param name="OnlyLooks">True when no takes are to be written.</param>
/// <param name="Folder">Where takes go.</param>
/// <param name="Replaces">True to write over takes that are there.</param>
/// <param name="AsJson">True for JSON.</param>
internal sealed record TakesWish(string Sheet, TakesQuestion Question, bool OnlyLooks, string Folder, bool Replaces, bool AsJson);

/// <summary>Writes takes as sheets and says what is in them, or which rules are in conflict.</summary>
internal static class TakesAnswerWriter
{
    public static int Run(Surroundings surroundings, SongWorkspace workspace, TakesWish wish)
    {
        if (!wish.OnlyLooks && OutputPlace.RefuseFolder(surroundings, wish.Folder, path => File.Exists(path) ? ($"{wish.Folder} is a file.", "Choose a folder with -o.") : null) is { } unfit) return unfit;
        var asked = wish.Question.Ask(workspace);
        if (asked.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        var answer = asked.Value;
        var files = answer.Takes.Select(t => (Name: FormattableString.Invariant($"{wish.Question.Name}-take-{t.Take.Number}.lore"), Text: t.Sheet)).ToList();
        if (!wish.OnlyLooks && answer.Conflict.IsEmpty
            && TakeFolder.Write(surroundings, wish.AsJson ? surroundings.Error : surroundings.Out, wish.Folder, files, wish.Replaces) is var code and not ExitCode.Fine) return code;
        if (wish.AsJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(Json(answer, wish), AnswerJson.Readable.RoadMapTakesJson));
        else Write(surroundings, answer, wish);
        return answer.Conflict.IsEmpty && answer.Takes.Length == wish.Question.Takes ? ExitCode.Fine : ExitCode.SheetHasErrors;
    }

    private static void Write(Surroundings surroundings, TakesAnswer answer, TakesWish wish)
    {
        var (stretch, output) = (answer.Stretch, surroundings.Out);
        var fixedBars = stretch.Bars.Where(b => !b.IsFree).Select(b => b.Number).ToList();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{stretch.Map.Name}: {Count(stretch.Count, "bar")} of {stretch.Part.Title} in {RoadMapPlace.SectionOf(stretch.Song, stretch.Use).Name}, {(fixedBars.Count == 0 ? "all free" : $"{fixedBars.Count} fixed")}, {Count(stretch.Map.Rules.Count, "rule")}."));
        if (!answer.Conflict.IsEmpty)
        {
            surroundings.Error.WriteLine(answer.Conflict.Length == 1 ? "No solo keeps this rule here:" : "No solo keeps these rules together:");
            foreach (var rule in answer.Conflict) surroundings.Error.WriteLine($"  {rule}");
            surroundings.Error.WriteLine(answer.Conflict.Length == 1 ? "Change it, or take it out." : "Change one of them, or take one out; without any one of them the others can be kept.");
            return;
        }
        if (answer.Takes.Length < wish.Question.Takes)
        {
            surroundings.Error.WriteLine(answer.Takes.IsEmpty
                ? "The rules can be kept, but no take was found that a hand can play and that sounds like phrases. Give it more room: frets, strings, density or cells."
                : $"Only {Count(answer.Takes.Length, "take")} were found that are all different. Give it more room: frets, strings, density or cells.");
        }
        if (wish.OnlyLooks)
        {
            if (!answer.Takes.IsEmpty) output.WriteLine("A solo can keep all of them. Write some with --takes 5.");
            return;
        }
        foreach (var written in answer.Takes)
        {
            var take = written.Take;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{wish.Folder}/{wish.Question.Name}-take-{take.Number}.lore: {LevelText.Word(take.Level)}, {Notes(take)} notes, {take.Hands.Difficulty.ToString().ToLowerInvariant()} for the hand"));
            output.WriteLine($"  {string.Join("; ", take.Phrases.Select(Say))}");
            if (take.Check.Licks.Length > 0) output.WriteLine($"  licks: {string.Join("; ", take.Check.Licks.Select(Say))}");
            if (take.Check.Aims.Length > 0) output.WriteLine($"  targets: {string.Join("; ", take.Check.Aims.Select(a => Say(a, stretch)))}");
        }
    }

    private static string Say(TakePhrase phrase)
    {
        var bars = phrase.BarCount == 1 ? $"bar {phrase.FirstBar}" : $"bars {phrase.FirstBar}-{phrase.FirstBar + phrase.BarCount - 1}";
        return $"{bars} {phrase.Kind.ToString().ToLowerInvariant()}{(phrase.Of is null ? "" : " " + phrase.Of)}";
    }

    internal static string Say(LickUse lick) => string.Create(CultureInfo.InvariantCulture,
        $"{lick.Riff} in {(lick.BarCount == 1 ? $"bar {lick.Bar}" : $"bars {lick.Bar}-{lick.Bar + lick.BarCount - 1}")}, {(lick.Kept == lick.Moments ? "as it is" : $"{lick.Kept} of its {lick.Moments} notes kept")}");

    internal static string Say(AimHit hit, SoloStretch stretch) => string.Create(CultureInfo.InvariantCulture,
        $"{Target(hit)} in bar {hit.Bar} on {PlaceWords.Beat(hit.At, stretch.Bars[hit.Bar - 1])} (string {hit.String}, fret {hit.Fret})");

    private static string Target(AimHit hit) => hit.Aim switch
    {
        Score.AimRule aim => aim.Target.ToString(),
        Score.EndRule end => $"end {end.Target}",
        _ => hit.Aim.ToString(),
    };

    private static RoadMapTakesJson Json(TakesAnswer answer, TakesWish wish)
    {
        var stretch = answer.Stretch;
        return new RoadMapTakesJson(
            stretch.Map.Name, stretch.Part.Name, RoadMapPlace.SectionOf(stretch.Song, stretch.Use).Name, stretch.Bars[0].Bar.Number, stretch.Count, wish.OnlyLooks ? null : wish.Question.Seed,
            [.. stretch.Bars.Where(b => !b.IsFree).Select(b => b.Number)], [.. stretch.Map.Rules.Select(r => r.ToString())], [.. answer.Conflict.Select(r => r.ToString())],
            wish.OnlyLooks ? [] : [.. answer.Takes.Select(t => Line(t.Take, wish))]);
    }

    private static TakeLine Line(SoloTake take, TakesWish wish) => new(
        FormattableString.Invariant($"{wish.Folder}/{wish.Question.Name}-take-{take.Number}.lore"), take.Number, Math.Round(take.Level, 2), Notes(take), take.Hands.Difficulty.ToString().ToLowerInvariant(),
        [.. take.Phrases.Select(p => new TakePhraseLine(p.Kind.ToString().ToLowerInvariant(), p.FirstBar, p.BarCount, p.Start.ToDouble(), p.End.ToDouble(), p.Of))],
        Licks(take.Check), Targets(take.Check));

    internal static IReadOnlyList<LickLine> Licks(RoadMapCheck check) => [.. check.Licks.Select(l => new LickLine(l.Riff, l.Bar, l.BarCount, l.Kept, l.Moments))];

    internal static IReadOnlyList<TargetLine> Targets(RoadMapCheck check) => [.. check.Aims.Select(a => new TargetLine(a.Aim.ToString(), a.Bar, a.At.ToDouble(), a.String, a.Fret))];

    private static int Notes(SoloTake take) => take.Bars.Sum(b => b.Notes.Count(n => !n.IsTiedFromBefore));

    private static string Count(int number, string word) => string.Create(CultureInfo.InvariantCulture, $"{number} {word}{(number == 1 ? "" : "s")}");
}
