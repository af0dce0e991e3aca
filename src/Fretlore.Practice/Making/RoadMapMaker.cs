using Fretlore.Practice.Data;
using Fretlore.Score;

namespace Fretlore.Practice.Making;

/// <summary>The free stretches of a song with what holds in each of their bars.</summary>
internal sealed class RoadMapMaker(Song song, Func<RoadMapRule, string> inWords)
{
    public IEnumerable<RoadMapData> All() =>
        from use in song.RoadMapUses
        let map = song.RoadMaps.FirstOrDefault(map => map.Name == use.RoadMap)
        where map is not null
        select new RoadMapData(
            map.Name, use.Part, [.. map.Rules.Select(inWords)],
            [.. Enumerable.Range(1, use.BarCount).Select(bar => Of(map, bar, use.BarCount))]);

    private FreeBarData Of(RoadMap map, int bar, int count)
    {
        var strings = map.RuleIn<StringsRule>(bar, count);
        var frets = map.RuleIn<FretsRule>(bar, count) is { } rule ? FretWindow.Of(rule, bar, count) : (FretWindow?)null;
        return new FreeBarData
        {
            Fixed = map.RulesOf<FixedRule>().FirstOrDefault(rule => rule.Bars?.Contains(bar, count) == true)?.Riff,
            Scale = map.RuleIn<ScaleRule>(bar, count) is { } scale ? TheoryMaker.ScaleOf(scale.Tonic, scale.Name) : null,
            HighestString = strings?.Highest.Value,
            LowestString = strings?.Lowest.Value,
            LowestFret = frets?.Low,
            HighestFret = frets?.High,
            Aims = [.. AimsIn(map, bar, count)],
            Rules = [.. map.Rules.Where(r => r is not (ScaleRule or StringsRule or FretsRule or AimRule or EndRule or FixedRule) && Holds(r, bar, count)).Select(inWords)],
        };
    }

    private IEnumerable<AimData> AimsIn(RoadMap map, int bar, int count)
    {
        foreach (var aim in map.RulesOf<AimRule>().Where(aim => Holds(aim, bar, count))) yield return new AimData(aim.Target.ToString(), aim.Target.PitchClass, inWords(aim));
        if (bar != count) yield break;
        foreach (var end in map.RulesOf<EndRule>()) yield return new AimData(end.Target.ToString(), end.Target.PitchClass, inWords(end));
    }

    private static bool Holds(RoadMapRule rule, int bar, int count) => rule.Bars?.Contains(bar, count) ?? true;
}
