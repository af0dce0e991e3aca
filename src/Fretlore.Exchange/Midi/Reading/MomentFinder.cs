using Fretlore.Score;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Gathers the keys of a part into moments: chords, chords that are rolled or strummed, and grace notes before them.</summary>
/// <param name="ticksPerQuarter">Ticks a quarter note.</param>
/// <param name="secondsAt">Seconds from the song's start at a tick.</param>
/// <param name="isExact">True when the file's times are those of note values.</param>
/// <param name="heightOf">What orders keys from low to high strings, or from low to high where strings are not known.</param>
internal sealed class MomentFinder(double ticksPerQuarter, Func<long, double> secondsAt, bool isExact, Func<MidiKey, int> heightOf)
{
    // Hands and pickups: what is struck together lies this close, a rolled chord this far apart (choices of this project).
    private const double TogetherSeconds = 0.035;
    private const double RollSeconds = 0.16;
    private const double GraceSeconds = 0.08;

    private readonly double tolerance = ExactGrid.Tolerance(ticksPerQuarter) * ticksPerQuarter;

    public List<MidiMoment> Find(List<MidiKey> keys)
    {
        var moments = new List<MidiMoment>();
        for (var first = 0; first < keys.Count;)
        {
            var after = first + 1;
            while (after < keys.Count && keys[after].On == keys[first].On) after++;
            var isSingle = after == first + 1;
            var spread = isSingle ? SpreadFrom(keys, first) : 0;
            if (spread > 1)
            {
                moments.Add(Spread(keys, first, spread));
                first += spread;
                continue;
            }
            if (!isExact) while (after < keys.Count && secondsAt(keys[after].On) - secondsAt(keys[first].On) <= TogetherSeconds) after++;
            var moment = new MidiMoment { Tick = keys[first].On };
            // One key is struck once.
            moment.Keys.AddRange(keys.Skip(first).Take(after - first).DistinctBy(k => (k.Channel, k.Number)));
            moments.Add(moment);
            first = after;
        }
        return WithGraces(moments);
    }

    // How many keys from this one on are one chord, struck one after the other from low to high or from high to low.
    private int SpreadFrom(List<MidiKey> keys, int first)
    {
        var count = 1;
        var (direction, step) = (0, 0L);
        for (var i = first + 1; i < keys.Count; i++, count++)
        {
            var gap = keys[i].On - keys[i - 1].On;
            var way = Math.Sign(heightOf(keys[i]) - heightOf(keys[i - 1]));
            if (gap == 0 || way == 0 || (direction != 0 && way != direction)) break;
            if (isExact ? gap > ticksPerQuarter / 16 + tolerance || (step > 0 && Math.Abs(gap - step) > tolerance + 0.5) : secondsAt(keys[i].On) - secondsAt(keys[i - 1].On) > TogetherSeconds) break;
            // All of them ring when the last one is struck.
            if (keys.Skip(first).Take(i - first).Any(k => k.Off <= keys[i].On)) break;
            if (!isExact && secondsAt(keys[i].On) - secondsAt(keys[first].On) > RollSeconds) break;
            (direction, step) = (way, step > 0 ? step : gap);
        }
        if (count > 1 && first + count < keys.Count && keys[first + count].On == keys[first + count - 1].On) count--;
        // Two notes may be near each other by chance.
        if (count == 2 && isExact && step > ticksPerQuarter / 64 && Math.Abs(step - ticksPerQuarter / 16) > tolerance) return 0;
        var isRoll = isExact || (count > 3 && secondsAt(keys[first + count - 1].On) - secondsAt(keys[first].On) > TogetherSeconds);
        return count > 1 && isRoll ? count : 0;
    }

    private MidiMoment Spread(List<MidiKey> keys, int first, int count)
    {
        var isUpwards = heightOf(keys[first + 1]) > heightOf(keys[first]);
        var isStrum = isExact && keys[first + 1].On - keys[first].On <= ticksPerQuarter / 64;
        var moment = new MidiMoment
        {
            Tick = keys[first].On,
            Roll = isStrum ? Roll.None : isUpwards ? Roll.LowToHigh : Roll.HighToLow,
            Stroke = !isStrum ? Stroke.None : isUpwards ? Stroke.Down : Stroke.Up,
        };
        moment.Keys.AddRange(keys.Skip(first).Take(count));
        return moment;
    }

    private List<MidiMoment> WithGraces(List<MidiMoment> moments)
    {
        var kept = new List<MidiMoment>();
        for (var i = 0; i < moments.Count; i++)
        {
            var count = GracesFrom(moments, i, kept.Count > 0 ? kept[^1] : null);
            if (count > 0)
            {
                for (var g = 0; g < count; g++) moments[i + count].Graces.Add(moments[i + g].Keys[0]);
                i += count;
            }
            kept.Add(moments[i]);
        }
        return kept;
    }

    // How many moments from here on are grace notes of the one after them: as a player of this program plays them, or short ones right before it.
    private int GracesFrom(List<MidiMoment> moments, int at, MidiMoment? before)
    {
        if (before is null || moments[at].Keys.Count > 1 || moments[at].Roll != Roll.None) return 0;
        var length = moments[at].Keys[0].Off - moments[at].Tick;
        if (!isExact)
        {
            var isShort = at + 1 < moments.Count && secondsAt(moments[at].Keys[0].Off) - secondsAt(moments[at].Tick) <= GraceSeconds && secondsAt(moments[at + 1].Tick) - secondsAt(moments[at].Tick) <= GraceSeconds;
            return isShort && moments[at + 1].Keys.Exists(k => k.Off - k.On > 3 * length && Math.Abs(k.Number - moments[at].Keys[0].Number) <= 4) ? 1 : 0;
        }
        // What stands where a 16th would is one.
        if (length > ticksPerQuarter / 8 + tolerance || IsOnSixteenth(moments[at])) return 0;
        var count = 1;
        while (at + count < moments.Count && count < 4 && moments[at + count].Keys.Count == 1 && !IsOnSixteenth(moments[at + count]) && IsBetween(moments, at + count - 1, length) && Math.Abs(moments[at + count].Keys[0].Off - moments[at + count].Tick - length) <= tolerance) count++;
        if (at + count >= moments.Count || !IsBetween(moments, at + count - 1, length)) return 0;
        // A key that is struck again is no grace note of itself.
        if (moments[at + count].Keys.Exists(k => k.Number == moments[at + count - 1].Keys[0].Number)) return 0;
        var room = moments[at + count].Tick - Math.Max(before.Tick, moments[at].Keys.Max(k => before.Keys.Where(b => b.Channel == k.Channel).Select(b => b.On).DefaultIfEmpty(0).Max()));
        return Math.Abs(length - Math.Min(ticksPerQuarter / 8, room / (2.0 * count))) <= tolerance ? count : 0;
    }

    private bool IsOnSixteenth(MidiMoment moment) => ExactGrid.IsOn(moment.Tick / ticksPerQuarter, 4, tolerance / ticksPerQuarter);

    private bool IsBetween(List<MidiMoment> moments, int at, long length) => Math.Abs(moments[at].Tick + length - moments[at + 1].Tick) <= tolerance;
}
