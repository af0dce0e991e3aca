using Fretlore.Practice.Data;
using Fretlore.Score;

namespace Fretlore.Practice.Making;

/// <summary>The rules of free stretches.</summary>
internal static class RoadMapMaker
{
    public static RoadMapData Of(RoadMap map)
    {
        var frets = map.RulesOf<FretsRule>().SelectMany(f => new[] { f.From.Number, f.To.Number }).ToArray();
        var strings = map.RulesOf<StringsRule>().SelectMany(s => new[] { s.Highest.Value, s.Lowest.Value }).ToArray();
        return new RoadMapData
        {
            Name = map.Name,
            Scale = map.RulesOf<ScaleRule>().FirstOrDefault() is { } scale ? TheoryMaker.ScaleOf(scale.Tonic, scale.Name) : null,
            HighestString = strings.Length > 0 ? strings.Min() : null,
            LowestString = strings.Length > 0 ? strings.Max() : null,
            LowestFret = frets.Length > 0 ? frets.Min() : null,
            HighestFret = frets.Length > 0 ? frets.Max() : null,
            Aims = [.. map.RulesOf<AimRule>().SelectMany(AimsOf)],
            MayUse = [.. map.RulesOf<LickRule>().SelectMany(l => l.Riffs.Items).Distinct()],
            Avoid = [.. map.RulesOf<AvoidRule>().SelectMany(a => a.What.Items).Select(w => w.ToString()!)],
        };
    }

    // One for each bar; bars counted from the stretch's end have no number here.
    private static IEnumerable<AimData> AimsOf(AimRule aim)
    {
        var bars = aim.Bars?.Ranges.Items.Where(r => r.First > 0).SelectMany(r => Enumerable.Range(r.First, r.Last - r.First + 1)).Select(b => (int?)b).ToList();
        return (bars is { Count: > 0 } ? bars : [null]).Select(bar => new AimData(aim.Target.ToString(), aim.Target.PitchClass, bar, aim.How?.ToString()));
    }
}
