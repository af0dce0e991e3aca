using Fretlore.Music;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Joins quick strokes of one key into one note that is tremolo-picked.</summary>
internal static class TremoloFinder
{
    private const int FewestStrokes = 3;

    /// <summary>The keys with each run of even 32nds or 64ths as one, and for those the value of a stroke.</summary>
    public static List<MidiKey> Joined(List<MidiKey> keys, double ticksPerQuarter, Dictionary<MidiKey, ValueBase> tremolos, bool isSwung)
    {
        var joined = new List<MidiKey>();
        foreach (var run in keys.GroupBy(k => (k.Channel, k.Number)).SelectMany(g => Runs([.. g], ticksPerQuarter)))
        {
            if (StrokeOf(run, ticksPerQuarter, isSwung) is not { } stroke || IsJoinedByOthers(run, keys))
            {
                joined.AddRange(run);
                continue;
            }
            var whole = new MidiKey { Channel = run[0].Channel, Number = run[0].Number, On = run[0].On, Off = run[^1].Off };
            tremolos[whole] = stroke;
            joined.Add(whole);
        }
        return [.. joined.OrderBy(k => k.On)];
    }

    // What is played meanwhile would have to cut the tremolo into values.
    private static bool IsJoinedByOthers(List<MidiKey> run, List<MidiKey> keys)
    {
        var (low, high) = (0, keys.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (keys[middle].On <= run[0].On) low = middle + 1;
            else high = middle;
        }
        for (; low < keys.Count && keys[low].On < run[^1].Off; low++)
        {
            if (keys[low].Channel != run[0].Channel || keys[low].Number != run[0].Number) return true;
        }
        return false;
    }

    // Keys that are struck again the moment they are let go, always after the same time.
    private static IEnumerable<List<MidiKey>> Runs(List<MidiKey> keys, double ticksPerQuarter)
    {
        var run = new List<MidiKey>();
        foreach (var key in keys)
        {
            if (run.Count > 0 && (key.On != run[^1].Off || Math.Abs(run[^1].Off - run[^1].On - (run[0].Off - run[0].On)) > 1 || run[0].Off - run[0].On > ticksPerQuarter / 8 + 1))
            {
                yield return run;
                run = [];
            }
            run.Add(key);
        }
        if (run.Count > 0) yield return run;
    }

    private static ValueBase? StrokeOf(List<MidiKey> run, double ticksPerQuarter, bool isSwung)
    {
        if (run.Count < FewestStrokes) return null;
        var tolerance = ExactGrid.Tolerance(ticksPerQuarter) * ticksPerQuarter;
        foreach (var stroke in (ReadOnlySpan<ValueBase>)[ValueBase.ThirtySecond, ValueBase.SixtyFourth])
        {
            var length = ticksPerQuarter * 4 / (int)stroke;
            if (Math.Abs(run[0].Off - run[0].On - length) > tolerance) continue;
            // A value that begins or ends between strokes would count them anew; swung ones do, and what is left over belongs to the last stroke.
            if (isSwung) return (int)Math.Floor((run[^1].Off - run[0].On + tolerance) / length) == run.Count ? stroke : null;
            return ExactGrid.IsOn(run[0].On / ticksPerQuarter, 8, tolerance / ticksPerQuarter) && Math.Abs(run[^1].Off - run[0].On - length * run.Count) <= tolerance ? stroke : null;
        }
        return null;
    }
}
