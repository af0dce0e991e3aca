using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.RoadMaps;

/// <summary>Says the rules of a road map in the order in which a player needs them.</summary>
public static class RoadMapTeller
{
    /// <summary>One call-out for each road map of the song, in the sheet's order.</summary>
    public static IReadOnlyList<RoadMapCallOut> For(Song song) => [.. song.RoadMaps.Select(map => For(map, song))];

    /// <summary>The call-out of one road map.</summary>
    /// <param name="map">Its rules.</param>
    /// <param name="song">Says how many bars it has, and how long its fixed phrases are; a map the song does not play is told without.</param>
    public static RoadMapCallOut For(RoadMap map, Song song)
    {
        var use = song.RoadMapUses.FirstOrDefault(u => u.RoadMap == map.Name);
        return new RoadMapCallOut(map.Name, SpokenName.Of(map.Name), new RoadMapHeadline(map, use, song).Tell(), WalkThrough(map, use));
    }

    private static Speech WalkThrough(RoadMap map, RoadMapUse? use)
    {
        var count = use?.BarCount ?? Math.Max(map.LastNamedBar, 1);
        return new Speech(map.Rules.OrderBy(Rank).ThenBy(rule => rule is AimRule ? FirstBar(rule, count) : 0).SelectMany(RuleWords.Sentences).ToValueList());
    }

    // What is given, the notes and their place, the rhythm, what to draw on, where to go, what to leave, the end.
    private static int Rank(RoadMapRule rule) => rule switch
    {
        FixedRule => 0,
        ScaleRule => 1,
        RolesRule => 2,
        StringsRule => 3,
        FretsRule => 4,
        ContourRule => 5,
        DensityRule => 6,
        RhythmRule => 7,
        LickRule => 8,
        AimRule => 9,
        AvoidRule => 10,
        _ => 11,
    };

    // A target for whichever bar comes after those that have theirs.
    internal static int FirstBar(RoadMapRule rule, int count) => rule.Bars?.In(count).FirstOrDefault(count + 1) ?? count + 1;
}
