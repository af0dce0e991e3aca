using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>Where written places of one bar are played when its eighths (or 16ths) are swung.</summary>
/// <remarks>
/// The first of two is played twice as long as the second (the triplet feel, common practice). Pairs are counted from the bar's start,
/// in a pickup from its end. A last value without a partner, and tuplets, are played as written.
/// </remarks>
internal readonly record struct Swing(Feel Feel, Bar Bar)
{
    /// <summary>For each written bar of a song the feel that is in force there.</summary>
    public static Swing[] AllOf(Song song)
    {
        var swings = new Swing[song.Bars.Count];
        var feel = Feel.Straight;
        for (var i = 0; i < swings.Length; i++)
        {
            feel = song.Bars[i].FeelChange ?? feel;
            swings[i] = new Swing(feel, song.Bars[i]);
        }
        return swings;
    }

    public Beats Place(Beats at)
    {
        if (Feel.Swung is not { } swung) return at;
        var half = Beats.Of(4, (int)swung);
        var pair = half * 2;
        var shift = Bar.IsPickup ? (pair - Bar.Length.Modulo(pair)).Modulo(pair) : Beats.Zero;
        var into = (at + shift).Modulo(pair);
        var start = at - into;
        if (start + pair > Bar.Length || start < Beats.Zero) return at;
        return into < half ? start + into * Beats.Of(4, 3) : start + half * Beats.Of(4, 3) + (into - half) * Beats.Of(2, 3);
    }

    /// <summary>The played starts of a strand's events, and after them the end of the last.</summary>
    public Beats[] Places(ValueList<Event> events)
    {
        var places = new Beats[events.Count + 1];
        for (var i = 0; i < events.Count; i++) places[i] = Place(events[i].Start);
        foreach (var (first, after) in TupletGroups.Of(events)) PlaceEvenly(events, first, after, places);
        if (events.Count > 0) places[^1] = Place(events[^1].End);
        return places;
    }

    // The group as a whole starts and ends where the feel puts it; its members are even.
    private void PlaceEvenly(ValueList<Event> events, int first, int after, Beats[] places)
    {
        var (start, end) = (events[first].Start, events[after - 1].End);
        var (from, to) = (Place(start), Place(end));
        for (var i = first; i < after; i++) places[i] = from + (events[i].Start - start) * (to - from) / (end - start);
    }
}
