using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>Which notes of a voice share a beam, by the metre's beats.</summary>
/// <remarks>
/// After Gould: beams show the beats and never hide one. Plain eighths are joined over two quarter beats (never across the middle of 4/4) or a whole
/// bar of 3/4; a half-note beat with anything shorter than an eighth is split at the quarter. A group ends at a rest.
/// </remarks>
internal static class BeamGroups
{
    /// <param name="meter">The bar's metre.</param>
    /// <param name="missing">How much of the metre's length is missing before the bar's first note (a pickup).</param>
    /// <param name="events">The voice's events in order.</param>
    public static ImmutableArray<(int First, int Last)> Of(Meter meter, Beats missing, ValueList<Event> events)
    {
        var groups = ImmutableArray.CreateBuilder<(int, int)>();
        var starts = new Beats[events.Count];
        for (var i = 0; i < starts.Length; i++) starts[i] = missing.IsZero ? events[i].Start : events[i].Start + missing;
        var next = 0;
        foreach (var end in WindowEnds(meter, starts, events))
        {
            var first = -1;
            for (; next < events.Count && starts[next] < end; next++)
            {
                var item = events[next];
                var beamable = !item.IsRest && item.Value.Base >= ValueBase.Eighth;
                if (beamable && first < 0) first = next;
                if (!beamable && first >= 0)
                {
                    Add(groups, first, next - 1);
                    first = -1;
                }
            }
            if (first >= 0) Add(groups, first, next - 1);
        }
        return groups.ToImmutable();
    }

    /// <summary>True when the second and further beams between two neighbours of a group are broken, to show a beat within it.</summary>
    /// <param name="meter">The bar's metre.</param>
    /// <param name="level">2 for the sixteenths' beam.</param>
    /// <param name="at">Where the right neighbour starts, counted from where the full bar would start.</param>
    public static bool Breaks(Meter meter, int level, Beats at)
    {
        if (level < 2) return false;
        var compound = meter.Unit >= 8;
        var unit = level == 2 ? (compound ? Beats.Zero : Beats.Quarter) : Beats.Of(1, 2);
        return !unit.IsZero && at.Modulo(unit).IsZero;
    }

    private static void Add(ImmutableArray<(int, int)>.Builder groups, int first, int last)
    {
        if (last > first) groups.Add((first, last));
    }

    private static List<Beats> WindowEnds(Meter meter, Beats[] starts, ValueList<Event> events)
    {
        var unit = Beats.Of(4, meter.Unit);
        var beats = meter.Groups;
        var ends = new List<Beats>();
        var at = Beats.Zero;
        for (var i = 0; i < beats.Count;)
        {
            var joined = 1;
            if (meter is { Unit: 4, StatedGroups.Count: 0 })
            {
                var wish = meter.Count == 3 ? (i == 0 ? 3 : 1) : meter.Count % 2 == 0 && i % 2 == 0 ? 2 : 1;
                if (wish > 1 && ArePlainEighths(events, starts, at, at + unit * wish, wish * 2)) joined = wish;
            }
            var length = Beats.Zero;
            for (var k = 0; k < joined; k++) length += unit * beats[i + k];
            if (length > Beats.Quarter && joined == 1 && meter.Unit <= 4)
            {
                for (var part = Beats.Quarter; part < length; part += Beats.Quarter)
                {
                    if (!ArePlainEighths(events, starts, at, at + length, -1)) ends.Add(at + part);
                }
            }
            at += length;
            ends.Add(at);
            i += joined;
        }
        ends.Add(Beats.Of(long.MaxValue / 1024));
        return ends;
    }

    private static bool ArePlainEighths(ValueList<Event> events, Beats[] starts, Beats from, Beats to, int count)
    {
        var found = 0;
        for (var i = 0; i < starts.Length && starts[i] < to; i++)
        {
            if (starts[i] < from) continue;
            var item = events[i];
            if (item.IsRest || item.Tuplet is not null || item.Value != new NoteValue(ValueBase.Eighth)) return false;
            found++;
        }
        return count < 0 || found == count;
    }
}
