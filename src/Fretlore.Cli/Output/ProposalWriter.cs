using System.Globalization;
using System.Text;
using System.Text.Json;
using Fretlore.Cli.Files;
using Fretlore.Cli.Json;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Workspace;
using Fretlore.Workspace.RoadMaps;

namespace Fretlore.Cli.Output;

/// <summary>Writes the road map that was found in takes.</summary>
internal static class ProposalWriter
{
    public static int Run(Surroundings surroundings, IReadOnlyList<SongWorkspace> takes, ProposalQuestion question, string? output, bool replaces, bool asJson)
    {
        if (output is not null && !output.EndsWith(".lore", StringComparison.OrdinalIgnoreCase))
        {
            return WrongUse.Write(surroundings.Error, $"A sheet's name ends in .lore, and {output} doesn't.", "Choose another name with -o.");
        }
        if (output is not null && OutputPlace.RefuseFile(surroundings, output, replaces) is { } unfit) return unfit;
        var asked = question.Ask(takes);
        if (asked.Misread is { } misread) return WrongUse.Write(surroundings.Error, misread);
        var answer = asked.Value;
        var report = asJson || output is null ? surroundings.Error : surroundings.Out;
        if (output is not null && NewSheetFile.Write(surroundings, report, output, Encoding.UTF8.GetBytes(answer.Sheet), replaces) is var code and not ExitCode.Fine) return code;
        if (asJson) surroundings.Out.WriteLine(JsonSerializer.Serialize(Json(answer, takes.Count), AnswerJson.Readable.ProposalJson));
        else
        {
            Report(report, answer, takes.Count);
            // The block goes on alone where it can be piped into a sheet.
            if (output is null) surroundings.Out.Write(answer.Block);
        }
        return ExitCode.Fine;
    }

    private static void Report(TextWriter report, ProposalAnswer answer, int takes)
    {
        var stretch = answer.Stretch;
        report.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{takes} takes of {stretch.Part.Title} in {RoadMapPlace.SectionOf(stretch.Song, stretch.Use).Name}: {Bars(stretch, b => !b.IsFree)} never changed, {Bars(stretch, b => b.IsFree)} wandered."));
        for (var i = 0; i < stretch.Map.Rules.Count; i++)
        {
            var broken = answer.Proposal.Checks.Count(c => !c.Rules[i].IsKept);
            if (broken > 0) report.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{stretch.Map.Rules[i]}: {broken} of the takes leave it for a note or two, on the way to another."));
        }
    }

    private static string Bars(SoloStretch stretch, Func<StretchBar, bool> which)
    {
        var numbers = stretch.Bars.Where(which).Select(b => b.Number).ToList();
        return numbers.Count switch { 0 => "no bar", 1 => $"bar {numbers[0]}", _ => "bars " + string.Join(", ", Runs(numbers)) };
    }

    private static IEnumerable<string> Runs(List<int> numbers)
    {
        for (var i = 0; i < numbers.Count;)
        {
            var end = i;
            while (end + 1 < numbers.Count && numbers[end + 1] == numbers[end] + 1) end++;
            yield return end == i ? FormattableString.Invariant($"{numbers[i]}") : FormattableString.Invariant($"{numbers[i]}-{numbers[end]}");
            i = end + 1;
        }
    }

    private static ProposalJson Json(ProposalAnswer answer, int takes)
    {
        var stretch = answer.Stretch;
        return new ProposalJson(
            stretch.Map.Name, stretch.Part.Name, RoadMapPlace.SectionOf(stretch.Song, stretch.Use).Name, stretch.Bars[0].Bar.Number, stretch.Count, takes,
            [.. stretch.Bars.Where(b => !b.IsFree).Select(b => b.Number)],
            [.. stretch.Map.Rules.Select((r, i) => new ProposedRuleLine(r.ToString(), answer.Proposal.Checks.Count(c => c.Rules[i].IsKept)))],
            answer.Proposal.Riffs, answer.Block);
    }
}
