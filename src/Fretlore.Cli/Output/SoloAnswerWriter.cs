using System.Globalization;
using System.Text.Json;
using Fretlore.Cli.Json;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Workspace;
using Fretlore.Workspace.RoadMaps;

namespace Fretlore.Cli.Output;

/// <summary>Says which rules a solo keeps and breaks, which licks it uses and which targets it hits.</summary>
internal static class SoloAnswerWriter
{
    private const int MostBreaks = 8;

    public static int Run(Surroundings surroundings, SongWorkspace workspace, SongWorkspace solo, string soloPath, SoloQuestion question, bool asJson)
    {
        var asked = question.Ask(workspace, solo);
        if (asked.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        var answer = asked.Value;
        if (asJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(Json(answer), AnswerJson.Readable.SoloCheckJson));
        else Write(surroundings.Out, answer, soloPath);
        return answer.Check.KeepsAll ? ExitCode.Fine : ExitCode.SheetHasErrors;
    }

    private static void Write(TextWriter output, SoloAnswer answer, string soloPath)
    {
        var (stretch, check) = (answer.Stretch, answer.Check);
        var kept = check.Rules.Count(r => r.IsKept);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{soloPath}: {(check.KeepsAll ? $"all {kept}" : $"{kept} of {check.Rules.Length}")} rules of {stretch.Map.Name} kept."));
        foreach (var outcome in check.Rules)
        {
            output.WriteLine($"  {(outcome.IsKept ? "kept  " : "broken")}  {outcome.Rule}");
            foreach (var wrong in outcome.Breaks.Take(MostBreaks)) output.WriteLine($"            {Place(wrong, stretch)}: {wrong.What}");
            if (outcome.Breaks.Length > MostBreaks) output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"            … and {outcome.Breaks.Length - MostBreaks} more; see all with --json"));
            if (outcome.Remark is { } remark) output.WriteLine($"            {remark}");
        }
        if (stretch.Map.RulesOf<Score.LickRule>().Any()) output.WriteLine("Licks: " + (check.Licks.IsEmpty ? "none." : string.Join("; ", check.Licks.Select(TakesAnswerWriter.Say)) + "."));
        if (check.Aims.Length > 0) output.WriteLine("Targets: " + string.Join("; ", check.Aims.Select(a => TakesAnswerWriter.Say(a, stretch))) + ".");
    }

    private static string Place(RuleBreak wrong, SoloStretch stretch) => string.Create(CultureInfo.InvariantCulture,
        $"bar {wrong.Bar}{(wrong.At is { } at ? ", " + PlaceWords.Beat(at, stretch.Bars[wrong.Bar - 1]) : "")}");

    private static SoloCheckJson Json(SoloAnswer answer) => new(
        answer.Stretch.Map.Name, answer.Check.KeepsAll,
        [.. answer.Check.Rules.Select(r => new RuleLine(r.Rule.ToString(), r.IsKept, [.. r.Breaks.Select(b => new BreakLine(b.Bar, b.At?.ToDouble(), b.What))], r.Remark))],
        TakesAnswerWriter.Licks(answer.Check), TakesAnswerWriter.Targets(answer.Check));
}
