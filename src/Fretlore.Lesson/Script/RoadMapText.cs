using Fretlore.Lesson.CallOuts.Words;
using Fretlore.Score;

namespace Fretlore.Lesson.Script;

/// <summary>The rules of a free stretch, as a teacher gives them to a player.</summary>
internal static class RoadMapText
{
    public static IEnumerable<string> Of(RoadMap map)
    {
        if (map.Scale is { } scale) yield return $"Play from {PitchWords.Of(scale.Tonic)} {scale.Name}.";
        if (map.Strings is { } strings) yield return $"Stay on strings {NumberWords.Of(strings.Lowest.Value)} to {NumberWords.Of(strings.Highest.Value)}.";
        if (Frets(map) is { } frets) yield return frets;
        if (map.Density is { } density)
        {
            yield return density.Slowest == density.Fastest
                ? $"Mostly {ValueWords.Plain(density.Slowest)}."
                : $"Mostly {ValueWords.Plain(density.Slowest)} to {ValueWords.Plain(density.Fastest)}.";
        }
        foreach (var aim in map.Aims)
        {
            var bar = aim.Bar is { } number ? $" in bar {NumberWords.Of(number)} of the stretch" : "";
            yield return $"Aim for {PitchWords.Of(aim.Target)}{bar}{(aim.How is null ? "" : ", reached " + aim.How)}.";
        }
        if (map.MayUse.Count > 0) yield return "You may draw on " + Listed(map.MayUse.Select(SpokenName.Of)) + ".";
        if (map.Avoid.Count > 0) yield return "Keep away from " + Listed(map.Avoid.Select(PitchWords.Of)) + ".";
    }

    private static string? Frets(RoadMap map) => (map.FromFret, map.ToFret) switch
    {
        ({ } from, { } to) => $"Start around fret {NumberWords.Of(from.Number)} and get to fret {NumberWords.Of(to.Number)}.",
        ({ } from, null) => $"Start around fret {NumberWords.Of(from.Number)}.",
        (null, { } to) => $"Get to fret {NumberWords.Of(to.Number)}.",
        _ => null,
    };

    private static string Listed(IEnumerable<string> words) => string.Join(", ", words);
}
