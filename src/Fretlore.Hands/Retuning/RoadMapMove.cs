using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>Moves the stretches of neck that a road map names along to another tuning.</summary>
internal static class RoadMapMove
{
    public static RoadMap Along(RoadMap map, NeckMove move, Neck from, int semitones)
    {
        var to = move.Moved(from);
        var named = map.RulesOf<StringsRule>().ToList();
        var numbers = Homes(named.Count == 0 ? (new StringNumber(1), new StringNumber(from.StringCount))
            : (new StringNumber(named.Min(s => s.Highest.Value)), new StringNumber(named.Max(s => s.Lowest.Value))));
        // As many frets as the strings of the map are moved on the whole.
        var shift = numbers.Count == 0 ? 0
            : (int)Math.Round(numbers.Average(n => from.Tuning[n].Height + from.Capo.CountedFrom + semitones - (to.Tuning[move.HomeOf(n)!.Value].Height + to.Capo.CountedFrom)));
        return map.WithPlaces(
            strings => Homes(strings) is [_, ..] there ? (move.HomeOf(there[0])!.Value, move.HomeOf(there[^1])!.Value) : null,
            fret => new Fret(Math.Clamp(fret.Number + shift, 0, to.HighestFret.Number)));

        List<StringNumber> Homes((StringNumber Highest, StringNumber Lowest) strings) =>
        [
            .. Enumerable.Range(strings.Highest.Value, strings.Lowest.Value - strings.Highest.Value + 1).Select(n => new StringNumber(n))
                .Where(n => n.Value <= from.StringCount && move.HomeOf(n) is not null),
        ];
    }
}
