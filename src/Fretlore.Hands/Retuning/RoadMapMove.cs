using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>Moves the stretch of neck that a road map names along to another tuning.</summary>
internal static class RoadMapMove
{
    public static RoadMap Along(RoadMap map, NeckMove move, Neck from, int semitones)
    {
        var to = move.Moved(from);
        var numbers = Enumerable.Range(1, from.StringCount).Select(n => new StringNumber(n))
            .Where(n => map.Strings is not { } strings || n.Value >= strings.Highest.Value && n.Value <= strings.Lowest.Value)
            .Where(n => move.HomeOf(n) is not null).ToList();
        if (numbers.Count == 0) return map with { Strings = null };
        // As many frets as the strings of the stretch are moved on the whole.
        var shift = (int)Math.Round(numbers.Average(n => from.Sounding(n, Fret.Open) + semitones - to.Sounding(move.HomeOf(n)!.Value, Fret.Open)));
        return map with
        {
            Strings = map.Strings is null ? null : (move.HomeOf(numbers[0])!.Value, move.HomeOf(numbers[^1])!.Value),
            FromFret = Shifted(map.FromFret),
            ToFret = Shifted(map.ToFret),
        };

        Fret? Shifted(Fret? fret) => fret is { } at ? new Fret(Math.Clamp(at.Number + shift, 0, to.HighestFret.Number)) : null;
    }
}
