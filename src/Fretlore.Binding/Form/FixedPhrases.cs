using Fretlore.Binding.Draft;
using Fretlore.Binding.Problems;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Form;

/// <summary>Puts the fixed phrases of road maps into their stretches; what is left stays free.</summary>
internal sealed class FixedPhrases(BindContext context)
{
    /// <summary>Fills the stretches of a line of music.</summary>
    public void Fill(Flow flow)
    {
        foreach (var stretch in flow.RoadMaps)
        {
            if (!context.RoadMaps.TryGetValue(stretch.Name, out var bound)) continue;
            var origin = flow.Bars[stretch.Start].Origin;
            var taken = new Dictionary<int, string>();
            for (var i = 0; i < bound.Map.Rules.Count; i++)
            {
                var rule = bound.Map.Rules[i];
                if (rule.Bars is { } bars && bars.Ranges.Items.Any(r => IsBeyond(r, stretch.Count)))
                {
                    context.Problems.Add(RoadMapProblems.BeyondStretch(origin, rule.ToString(), stretch.Count));
                }
                else if (rule is FixedRule phrase) Fill(flow, stretch, phrase, bound.Spans[i], taken);
            }
        }
    }

    private static bool IsBeyond(StretchRange range, int count) => range.In(count) is var (first, last) && (first < 1 || last > count);

    private void Fill(Flow flow, NamedSpan stretch, FixedRule phrase, TextSpan span, Dictionary<int, string> taken)
    {
        if (context.Riffs.Fixed(phrase.Riff, flow.Bars[stretch.Start].Bar.Neck, span) is not { Bars.Count: > 0 and var length } riff) return;
        foreach (var range in phrase.Bars!.Ranges)
        {
            var (first, last) = range.In(stretch.Count);
            var asked = last - first + 1;
            // One bar is where the phrase begins; more of them are the bars it fills.
            var room = asked == 1 ? stretch.Count - first + 1 : asked;
            if (length > room || (asked > 1 && asked % length != 0))
            {
                context.Problems.Add(RoadMapProblems.FixedDoesNotFit(span, phrase.Riff, length, room));
                continue;
            }
            for (var start = first; start <= last; start += length) Put(flow, stretch, riff, phrase.Riff, start, span, taken);
        }
    }

    private void Put(Flow flow, NamedSpan stretch, Flow riff, string name, int start, TextSpan span, Dictionary<int, string> taken)
    {
        var length = riff.Bars.Count;
        for (var bar = start; bar < start + length; bar++)
        {
            if (taken.TryAdd(bar, name)) continue;
            context.Problems.Add(RoadMapProblems.FixedOverlap(span, name, taken[bar], bar));
            return;
        }
        if (!context.Limits.Take(0, riff.NoteCount, 0, span, context.Problems)) return;
        for (var i = 0; i < length; i++)
        {
            var at = stretch.Start + start - 1 + i;
            var free = flow.Bars[at].Bar;
            flow.Bars[at] = flow.Bars[at] with
            {
                Bar = riff.Bars[i].Bar with { RoadMap = free.RoadMap, RoadMapBar = free.RoadMapBar, Changes = [.. free.Changes, .. riff.Bars[i].Bar.Changes] },
            };
        }
        flow.Riffs.Add(new NamedSpan(name, stretch.Start + start - 1, length));
    }
}
