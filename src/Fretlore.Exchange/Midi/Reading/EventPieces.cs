using Fretlore.Exchange.Import;
using Fretlore.Music;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Cuts a written stretch of a bar into values that can be read: whole where one value gives it, else at the beats.</summary>
internal static class EventPieces
{
    /// <summary>The pieces in order.</summary>
    /// <param name="from">Where it begins in its bar.</param>
    /// <param name="to">Where it ends in its bar.</param>
    /// <param name="divisionOf">Into how many parts a quarter of the bar is divided.</param>
    public static IEnumerable<(Beats Start, NoteValue Value, Tuplet? Tuplet, Beats Length)> Of(Beats from, Beats to, Func<int, int> divisionOf)
    {
        while (from < to)
        {
            var quarter = (int)from.WholeCount(Beats.Quarter);
            var edge = Beats.Min(to, Beats.Of(quarter + 1));
            if (IsPlain(from) && IsPlain(to) && ValuePieces.Of(to - from) is [{ Tuplet: null } whole])
            {
                yield return (from, whole.Value, null, to - from);
                yield break;
            }
            if (!IsPlain(from) || !IsPlain(edge))
            {
                foreach (var piece in Divided(from, edge, divisionOf(quarter))) yield return piece;
                from = edge;
                continue;
            }
            // From beat to beat as far as it goes, or up to the next beat.
            var last = Beats.Of(to.WholeCount(Beats.Quarter));
            var stop = from.Denominator == 1 && last > from ? last : edge;
            foreach (var (value, tuplet) in ValuePieces.Of(stop - from))
            {
                var length = tuplet is { } t ? value.Length * t.Factor : value.Length;
                yield return (from, value, tuplet, length);
                from += length;
            }
            from = stop;
        }

        // Between quarters, or within one that no tuplet divides.
        bool IsPlain(Beats at) => at.Denominator == 1 || WrittenRhythm.IsPlain(divisionOf((int)at.WholeCount(Beats.Quarter)));
    }

    // Units of a quarter's tuplet: 3 eighths, 5 to 7 sixteenths, 9 to 15 thirty-seconds, 24 sixty-fourths.
    private static IEnumerable<(Beats, NoteValue, Tuplet?, Beats)> Divided(Beats from, Beats to, int division)
    {
        var (unit, inTimeOf) = division switch { 3 => (ValueBase.Eighth, 2), < 8 => (ValueBase.Sixteenth, 4), < 16 => (ValueBase.ThirtySecond, 8), _ => (ValueBase.SixtyFourth, 16) };
        var tuplet = new Tuplet(division, inTimeOf, unit);
        var step = Beats.Of(1, division);
        for (var left = (to - from).WholeCount(step); left > 0;)
        {
            var (units, value) = Largest(left, unit);
            yield return (from, value, tuplet, step * units);
            from += step * units;
            left -= units;
        }
    }

    private static (long Units, NoteValue Value) Largest(long most, ValueBase unit)
    {
        for (var doublings = 3; doublings > 0; doublings--)
        {
            if ((int)unit >> doublings < (int)ValueBase.Quarter) continue;
            var (value, units) = ((ValueBase)((int)unit >> doublings), 1L << doublings);
            if (most >= units * 3 / 2) return (units * 3 / 2, new NoteValue(value, 1));
            if (most >= units) return (units, new NoteValue(value));
        }
        return (1, new NoteValue(unit));
    }
}
