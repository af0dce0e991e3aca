using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>Where the licks of a road map may stand in a stretch.</summary>
internal static class LickPlaces
{
    /// <summary>Each place once, in order of the rules and the bars.</summary>
    public static ImmutableArray<(LickRule Rule, Riff Riff, int First)> In(SoloStretch stretch)
    {
        var places = ImmutableArray.CreateBuilder<(LickRule, Riff, int)>();
        foreach (var rule in stretch.Map.RulesOf<LickRule>())
        {
            foreach (var riff in rule.Riffs.Select(stretch.RiffOf).OfType<Riff>())
            {
                for (var first = 1; first + riff.Bars.Count - 1 <= stretch.Count; first++)
                {
                    if (LickFinder.Fits(stretch, rule, riff, first) && IsAllowed(stretch, rule, riff, first)) places.Add((rule, riff, first));
                }
            }
        }
        return places.ToImmutable();
    }

    // What is to be avoided binds every lick; without bars of its own, a lick's notes must keep the other rules too.
    private static bool IsAllowed(SoloStretch stretch, LickRule rule, Riff riff, int first)
    {
        if (riff.Bars.Any(b => b.RepeatCount > 0 || b.IsPickup || b.EndingPasses.Count > 0) || riff.Neck.Tuning != stretch.Part.Neck.Tuning || riff.Neck.Capo != stretch.Part.Neck.Capo) return false;
        var content = stretch.Bars.Select((bar, i) => i >= first - 1 && i < first - 1 + riff.Bars.Count
            ? riff.Content[i - first + 1] : new PartBar(stretch.Part.Neck, [])).ToList();
        foreach (var outcome in RoadMapChecker.Check(stretch.With(RulesFor(stretch.Map, rule)), content).Rules)
        {
            if (!outcome.IsKept) return false;
        }
        return true;
    }

    // The licks are taken out so that the notes are judged as notes of their own.
    private static RoadMap RulesFor(RoadMap map, LickRule rule) => map with
    {
        Rules = map.Rules.Where(r => r is AvoidRule || (rule.Bars is null && r is ScaleRule or StringsRule or FretsRule or RolesRule)).ToValueList(),
    };
}
