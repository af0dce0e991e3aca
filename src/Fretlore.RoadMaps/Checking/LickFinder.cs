using System.Collections.Immutable;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Checking;

/// <summary>Finds the licks of a road map in a solo.</summary>
/// <remarks>A lick is there when two thirds of its moments, and three at least, are played at their places on the neck and in the bar.</remarks>
internal static class LickFinder
{
    private const int LeastKept = 3;

    /// <summary>The moments of a lick that must be kept for it to be that lick.</summary>
    public static int MustKeep(int moments) => Math.Max(Math.Min(LeastKept, moments), (2 * moments + 2) / 3);

    /// <summary>Licks in order of time, none over another, and the moments of the solo that are theirs.</summary>
    public static (ImmutableArray<LickUse> Uses, HashSet<LineMoment> Moments) Find(SoloStretch stretch, ImmutableArray<LineMoment> line)
    {
        var found = new List<(LickUse Use, List<LineMoment> Moments)>();
        foreach (var rule in stretch.Map.RulesOf<LickRule>())
        {
            foreach (var riff in rule.Riffs.Select(stretch.RiffOf).OfType<Riff>()) found.AddRange(Find(stretch, line, rule, riff));
        }
        var uses = new List<LickUse>();
        var taken = new HashSet<int>();
        var theirs = new HashSet<LineMoment>(ReferenceEqualityComparer.Instance);
        foreach (var (use, moments) in found.OrderByDescending(f => f.Use.Kept).ThenBy(f => f.Use.Bar))
        {
            var bars = Enumerable.Range(use.Bar, use.BarCount).ToList();
            if (bars.Exists(taken.Contains)) continue;
            taken.UnionWith(bars);
            theirs.UnionWith(moments);
            uses.Add(use);
        }
        return ([.. uses.OrderBy(u => u.Bar)], theirs);
    }

    private static IEnumerable<(LickUse Use, List<LineMoment> Moments)> Find(SoloStretch stretch, ImmutableArray<LineMoment> line, LickRule rule, Riff riff)
    {
        var lick = MomentsOf(riff);
        if (lick.IsEmpty) yield break;
        for (var first = 1; first + riff.Bars.Count - 1 <= stretch.Count; first++)
        {
            if (!Fits(stretch, rule, riff, first)) continue;
            var kept = new List<LineMoment>();
            foreach (var moment in lick)
            {
                if (line.FirstOrDefault(m => m.Bar == first + moment.Bar - 1 && m.At == moment.At && m.HasSamePlacesAs(moment)) is { } same) kept.Add(same);
            }
            if (kept.Count >= MustKeep(lick.Length)) yield return (new LickUse(riff.Name, first, riff.Bars.Count, kept.Count, lick.Length), kept);
        }
    }

    public static ImmutableArray<LineMoment> MomentsOf(Riff riff) => SoloLine.Of(riff.Content, [.. riff.Bars.Select(b => b.Length)]);

    /// <summary>True where a lick may begin: in free bars of its metre, and within the bars the rule has for it.</summary>
    public static bool Fits(SoloStretch stretch, LickRule rule, Riff riff, int first)
    {
        for (var i = 0; i < riff.Bars.Count; i++)
        {
            if (first + i > stretch.Count || stretch.Bars[first + i - 1] is not { IsFree: true } bar || bar.Length != riff.Bars[i].Length) return false;
            if (rule.Bars is { } bars && !bars.Contains(first + i, stretch.Count)) return false;
        }
        return true;
    }
}
