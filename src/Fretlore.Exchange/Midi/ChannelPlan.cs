using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Performance;

namespace Fretlore.Exchange.Midi;

/// <summary>Which channel each string of each part plays on, 1 to 16 without 10, the drums' in General MIDI.</summary>
/// <remarks>
/// One a string while there are enough. Otherwise strings of one part share, those first that get least in each other's way
/// (<see cref="StringConflicts"/>): a part has one sound, so that strings of two parts share only where there are more than fifteen parts.
/// </remarks>
internal sealed class ChannelPlan
{
    private const int Most = 15;

    private readonly Dictionary<(int Part, StringNumber String), int> channels;

    private ChannelPlan(Dictionary<(int Part, StringNumber String), int> channels, int bendSemitones)
    {
        this.channels = channels;
        BendSemitones = bendSemitones;
    }

    /// <summary>The bend range set on every channel: an octave, or as far as the widest glide goes.</summary>
    public int BendSemitones { get; }

    public int this[int part, StringNumber number] => channels[(part, number)];

    /// <summary>The channels of a part, in order.</summary>
    public ImmutableArray<int> Of(int part) => [.. channels.Where(c => c.Key.Part == part).Select(c => c.Value).Distinct().Order()];

    /// <summary>True where another string of the part plays on the same channel.</summary>
    public bool IsShared(int part, StringNumber number) => channels.Any(c => c.Key.Part == part && c.Key.String != number && c.Value == this[part, number]);

    public static ChannelPlan For(PerformedSong performance)
    {
        var parts = performance.Parts.Select(Strings).ToList();
        if (parts.Sum(p => p.Count) > Most) Share(parts, [.. performance.Parts.Select(StringConflicts.Of)]);
        var channels = new Dictionary<(int, StringNumber), int>();
        var next = 0;
        for (var part = 0; part < parts.Count; part++)
        {
            foreach (var group in parts[part])
            {
                // Beyond fifteen parts channels are used again in turn.
                var channel = next++ % Most + 1;
                foreach (var number in group) channels[(part, new StringNumber(number))] = channel >= 10 ? channel + 1 : channel;
            }
        }
        var reach = performance.Parts.SelectMany(p => p.Notes).Select(n => n.Pitch.Reach).DefaultIfEmpty(0).Max();
        return new ChannelPlan(channels, Math.Max(12, (int)Math.Ceiling(reach / 100)));
    }

    // Each string by itself, the lowest first.
    private static List<List<int>> Strings(PerformedPart part)
    {
        var count = part.Part.Bars.Select(b => b.Neck.StringCount).Append(part.Part.Neck.StringCount).Max();
        return [.. Enumerable.Range(1, count).Reverse().Select(n => new List<int> { n })];
    }

    // Two groups of one part become one, again and again, where that costs least; of equal ones those of the part that has most.
    private static void Share(List<List<List<int>>> parts, StringConflicts[] conflicts)
    {
        while (parts.Sum(p => p.Count) > Most)
        {
            (double Cost, int Groups, int Part, int First, int Second)? best = null;
            for (var part = 0; part < parts.Count; part++)
            {
                var groups = parts[part];
                for (var first = 0; first < groups.Count; first++)
                {
                    for (var second = first + 1; second < groups.Count; second++)
                    {
                        var cost = groups[first].Sum(a => groups[second].Sum(b => conflicts[part].Cost(a, b)));
                        if (best is not { } known || cost < known.Cost || (cost == known.Cost && groups.Count > known.Groups)) best = (cost, groups.Count, part, first, second);
                    }
                }
            }
            if (best is not var (_, _, at, into, from)) return;
            parts[at][into].AddRange(parts[at][from]);
            parts[at].RemoveAt(from);
        }
    }
}
