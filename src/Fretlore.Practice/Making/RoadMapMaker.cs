using Fretlore.Practice.Data;
using Fretlore.Score;

namespace Fretlore.Practice.Making;

/// <summary>The rules of free stretches.</summary>
internal static class RoadMapMaker
{
    public static RoadMapData Of(RoadMap map)
    {
        var frets = new[] { map.FromFret?.Number, map.ToFret?.Number }.OfType<int>().ToArray();
        return new RoadMapData
        {
            Name = map.Name,
            Scale = map.Scale is { } scale ? TheoryMaker.ScaleOf(scale.Tonic, scale.Name) : null,
            HighestString = map.Strings?.Highest.Value,
            LowestString = map.Strings?.Lowest.Value,
            LowestFret = frets.Length == 2 ? frets.Min() : null,
            HighestFret = frets.Length == 2 ? frets.Max() : null,
            Aims = [.. map.Aims.Select(aim => new AimData(aim.Target.ToString(), aim.Target.PitchClass, aim.Bar, aim.How))],
            MayUse = [.. map.MayUse],
            Avoid = [.. map.Avoid.Select(note => note.ToString())],
        };
    }
}
