using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Form;

/// <summary>One part's music in a section.</summary>
/// <param name="Part">Index of the part.</param>
/// <param name="Flow">Its bars.</param>
/// <param name="Span">Where findings about the whole line point.</param>
/// <param name="IsIncomplete">True when bars are missing for a reason already reported.</param>
internal sealed record SectionLine(int Part, Flow Flow, TextSpan Span, bool IsIncomplete);

/// <summary>Lays the parts of a section side by side: pickups for all, rests where a part has nothing, one metre a bar.</summary>
internal sealed class SectionLayout(SongDraft draft, Timeline timeline, DiagnosticBag problems)
{
    private string sectionName = "";

    /// <param name="name">The section's name, for messages.</param>
    /// <param name="lines">At most one for each part.</param>
    /// <param name="necks">For each part the neck where it has no line; changed to the neck at the section's end.</param>
    /// <param name="settings">Changes the section's own settings make at its start.</param>
    public void Lay(string name, IReadOnlyList<SectionLine> lines, Neck[] necks, ImmutableArray<PlacedChange> settings)
    {
        sectionName = name;
        var first = draft.Columns.Count;
        var next = new int[lines.Count];
        var columns = lines.Select(l => new int[l.Flow.Bars.Count + 1]).ToArray();
        var own = settings.Select(c => new Source("the section", c)).ToList();
        while (HasMore(lines, next))
        {
            LayBar(lines, next, columns, necks, own);
            own.Clear();
        }
        for (var l = 0; l < lines.Count; l++)
        {
            columns[l][^1] = columns[l].Length > 1 ? columns[l][^2] + 1 : first;
            Record(lines[l], columns[l]);
            ReportMissing(lines[l], columns[l], first);
        }
        draft.Sections.Add((name, first, draft.Columns.Count));
    }

    private static bool HasMore(IReadOnlyList<SectionLine> lines, int[] next)
    {
        for (var l = 0; l < next.Length; l++)
        {
            if (next[l] < lines[l].Flow.Bars.Count) return true;
        }
        return false;
    }

    private void LayBar(IReadOnlyList<SectionLine> lines, int[] next, int[][] columns, Neck[] necks, List<Source> sources)
    {
        var column = draft.Columns.Count;
        var bars = new DraftBar?[draft.Parts.Count];
        (int Line, FlowBar Bar)? pickup = null;
        for (var l = 0; l < lines.Count; l++)
        {
            if (next[l] >= lines[l].Flow.Bars.Count || !lines[l].Flow.Bars[next[l]].Bar.IsPickup) continue;
            var bar = lines[l].Flow.Bars[next[l]];
            if (pickup is not { } other) pickup = (l, bar);
            else if (other.Bar.Bar.Length != bar.Bar.Length)
            {
                problems.Add(FormProblems.PickupsDisagree(bar.Origin, NameOf(lines[other.Line]), NameOf(lines[l])));
            }
        }
        (string Part, Meter Meter, TextSpan Span)? riffMeter = null;
        var endLine = BarLine.Single;
        for (var l = 0; l < lines.Count; l++)
        {
            if (next[l] >= lines[l].Flow.Bars.Count) continue;
            var bar = lines[l].Flow.Bars[next[l]];
            if (pickup is not null && !bar.Bar.IsPickup) continue;
            columns[l][next[l]++] = column;
            bars[lines[l].Part] = bar.Bar;
            necks[lines[l].Part] = bar.Bar.Neck;
            foreach (var change in bar.Bar.Changes) sources.Add(new Source(NameOf(lines[l]), change));
            if (bar.Bar.EndLine == BarLine.Double) endLine = BarLine.Double;
            if (bar.Bar.Meter is not { } meter) continue;
            if (riffMeter is not { } other) riffMeter = (NameOf(lines[l]), meter, bar.Origin);
            else if (other.Meter != meter)
            {
                problems.Add(FormProblems.MetersDisagree(bar.Origin, NameOf(lines[l]), meter, other.Part, other.Meter));
            }
        }
        draft.Jumps.Add(sources, column);
        draft.Columns.Add(timeline.Next(sources, riffMeter, pickup?.Bar.Bar.Length, endLine));
        for (var l = 0; l < lines.Count; l++) CheckLength(lines[l], bars[lines[l].Part], next[l], column);
        for (var p = 0; p < bars.Length; p++)
        {
            draft.Bars[p].Add(bars[p] ?? new DraftBar { Kind = BarKind.Rest, Neck = necks[p], Span = default, IsPickup = pickup is not null });
        }
    }

    private void CheckLength(SectionLine line, DraftBar? bar, int number, int column)
    {
        // A riff's bars have been checked where the riff is written.
        if (bar is null || bar.Meter is not null) return;
        BarCheck.Check(bar, draft.Columns[column].Meter, $"Bar {number} of {NameOf(line)} in {sectionName}", problems);
    }

    private string NameOf(SectionLine line) => draft.Parts[line.Part].Name;

    private void Record(SectionLine line, int[] columns)
    {
        foreach (var riff in line.Flow.Riffs) draft.Riffs.Add(Over(riff));
        foreach (var map in line.Flow.RoadMaps) draft.RoadMaps.Add(Over(map));
        foreach (var repeat in line.Flow.Repeats)
        {
            var passes = repeat.Passes.Select(p =>
            {
                var (start, end) = (columns[p.Start], p.End > p.Start ? columns[p.End - 1] + 1 : columns[p.Start]);
                var body = p.Body > 0 ? columns[p.Start + p.Body - 1] + 1 - start : 0;
                return new PassSpan(start, body, p.Ending, end - start - body);
            });
            draft.Repeats.Add(new RepeatSpan([.. passes]));
        }

        PartSpan Over(NamedSpan span) => new(line.Part, span.Name, columns[span.Start], columns[span.Start + span.Count - 1] + 1);
    }

    private void ReportMissing(SectionLine line, int[] columns, int first)
    {
        if (line.IsIncomplete) return;
        var missing = 0;
        for (var c = Math.Max(first, columns[^1]); c < draft.Columns.Count; c++)
        {
            if (!draft.Columns[c].IsPickup) missing++;
        }
        if (missing > 0) problems.Add(FormProblems.PartTooShort(line.Span, NameOf(line), sectionName, missing));
    }
}
