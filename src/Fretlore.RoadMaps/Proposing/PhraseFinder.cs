using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Proposing;

/// <summary>Fixed phrases and licks as rules, and the riffs that are written for them.</summary>
/// <param name="Rules">Fixed phrases in order, then licks.</param>
/// <param name="Riffs">Those that the song does not have yet.</param>
internal sealed record FoundPhrases(ImmutableArray<RoadMapRule> Rules, ImmutableArray<Riff> Riffs);

/// <summary>Finds what takes have in common note by note: phrases that never change, and licks that come back.</summary>
internal sealed class PhraseFinder(TakeSet takes)
{
    // A bar of fewer notes that comes back is no lick.
    private const int LeastNotes = 4;
    private const int MostLicks = 6;

    private readonly List<Riff> made = [];

    // Bars that are a lick of the song's, as it is or varied.
    private readonly HashSet<(int Take, int Bar)> ofKnown = [];

    public FoundPhrases Find()
    {
        var rules = new List<RoadMapRule>();
        for (var bar = 0; bar < takes.Use.BarCount;)
        {
            if (!takes.IsFixed[bar])
            {
                bar++;
                continue;
            }
            var end = bar;
            while (end < takes.Use.BarCount && takes.IsFixed[end]) end++;
            bar = Fixed(bar, end, rules);
        }
        var licks = Known().Concat(Repeated()).ToList();
        return new FoundPhrases([.. rules, .. licks], [.. made]);
    }

    // A riff of the song where one is played, else all up to the next one.
    private int Fixed(int first, int end, List<RoadMapRule> rules)
    {
        if (Known(first, end) is { } known)
        {
            rules.Add(new FixedRule(known.Name, StretchBars.Of(first + 1, first + 1)));
            return first + known.Bars.Count;
        }
        var last = first + 1;
        while (last < end && Known(last, end) is null) last++;
        rules.Add(new FixedRule(RiffFor(first, last, "fixed").Name, StretchBars.Of(first + 1, first + 1)));
        return last;
    }

    private Riff? Known(int first, int end) => Riffs.Where(r => r.Bars.Count <= end - first && r.Bars.Count > 0 && IsAt(r, first, takes.Takes[0])).MaxBy(r => r.Bars.Count);

    private IEnumerable<Riff> Riffs => takes.Song.Riffs.Where(r => r.Neck.Tuning == takes.Stretch.Part.Neck.Tuning
        && r.Bars.All(b => b is { RepeatCount: 0, StartsRepeat: false, IsPickup: false, EndingPasses.Count: 0 }));

    private bool IsAt(Riff riff, int first, ImmutableArray<PartBar> take) => Enumerable.Range(0, riff.Bars.Count).All(i =>
        riff.Bars[i].Length == takes.Lengths[first + i] && TakeSet.AreSame(riff.Content[i], take[first + i], takes.Lengths[first + i]));

    private Riff RiffFor(int first, int end, string kind, ImmutableArray<PartBar>? of = null)
    {
        var take = of ?? takes.Takes[0];
        if (made.Find(r => r.Bars.Count == end - first && IsAt(r, first, take)) is { } again) return again;
        var number = made.Count(r => r.Name.Contains(kind, StringComparison.Ordinal)) + 1;
        var riff = new Riff
        {
            Name = FormattableString.Invariant($"{takes.Use.RoadMap}.{kind}{number}"),
            Neck = take[first].Neck,
            Bars = Enumerable.Range(first, end - first).Select(b => takes.Stretch.Bars[b].Bar with { Number = b - first + 1, Tempos = [], FeelChange = null, EndLine = BarLine.Single }).ToValueList(),
            Content = new ValueList<PartBar>([.. take[first..end].Select(b => b with { Repeats = 0, RoadMap = null })]),
        };
        made.Add(riff);
        return riff;
    }

    /// <summary>The song's own riffs that takes draw on.</summary>
    private List<RoadMapRule> Known()
    {
        var names = Riffs.Where(r => r.Bars.Count < takes.Use.BarCount && LickFinder.MomentsOf(r).Length >= LeastNotes).Select(r => r.Name).ToValueList();
        if (names.Count == 0) return [];
        var stretch = takes.Stretch.With(new RoadMap { Name = takes.Use.RoadMap, Rules = [new LickRule(names)] });
        var uses = new List<LickUse>();
        for (var take = 0; take < takes.Lines.Length; take++)
        {
            foreach (var use in LickFinder.Find(stretch, takes.Lines[take]).Uses)
            {
                if (Enumerable.Range(use.Bar - 1, use.BarCount).Any(b => takes.IsFixed[b])) continue;
                uses.Add(use);
                for (var bar = use.Bar - 1; bar < use.Bar - 1 + use.BarCount; bar++) ofKnown.Add((take, bar));
            }
        }
        // Once, and varied at that, may be chance.
        return [.. uses.GroupBy(u => u.Riff).Where(g => g.Count() > 1 || g.Any(u => u.Kept == u.Moments))
            .Select(g => new LickRule([g.Key], Range(g.Min(u => u.Bar), g.Max(u => u.Bar + u.BarCount - 1))))];
    }

    /// <summary>Bars that come in several takes, or several times, and are no riff yet.</summary>
    private IEnumerable<RoadMapRule> Repeated()
    {
        var bars = takes.Takes.SelectMany((take, t) => Enumerable.Range(0, take.Length).Where(b => !takes.IsFixed[b] && !ofKnown.Contains((t, b))).Select(b => (Take: t, Bar: b, Key: KeyOf(take[b], takes.Lengths[b]))))
            .Where(b => b.Key is not null).GroupBy(b => b.Key!).Where(g => g.Select(b => b.Take).Distinct().Count() > 1);
        foreach (var group in bars.OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Take(MostLicks))
        {
            var (take, bar, _) = group.First();
            if (Riffs.Any(r => r.Bars.Count == 1 && IsAt(r, bar, takes.Takes[take]))) continue;
            var riff = RiffFor(bar, bar + 1, "lick", takes.Takes[take]);
            yield return new LickRule([riff.Name], Range(group.Min(b => b.Bar) + 1, group.Max(b => b.Bar) + 1));
        }
    }

    private StretchBars? Range(int first, int last) => first == 1 && last == takes.Use.BarCount ? null : StretchBars.Of(first, last);

    private static string? KeyOf(PartBar bar, Beats length)
    {
        var line = SoloLine.Of([bar], [length]);
        return line.Length < LeastNotes ? null : string.Join(' ', line.Select(m => $"{m.At}+{m.Length}:{string.Join(',', m.Notes.Select(n => $"{n.String}/{n.Fret}"))}"));
    }
}
