using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Performance;

namespace Fretlore.Exchange.Midi;

/// <summary>Which channel each string of each part plays on, 1 to 16 without 10, the drums' in General MIDI.</summary>
/// <remarks>
/// One a string while there are enough. Otherwise strings whose pitch moves come first and the steady strings of a part share one; if
/// that is not enough either, a part's moving strings share as well, and beyond fifteen parts channels are used again in turn.
/// </remarks>
internal sealed class ChannelPlan
{
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

    public static ChannelPlan For(PerformedSong performance)
    {
        var strings = new List<(int Part, StringNumber String, bool Moves)>();
        var reach = 0.0;
        for (var part = 0; part < performance.Parts.Length; part++)
        {
            var moving = performance.Parts[part].Notes.Where(n => !n.Pitch.IsFlat).Select(n => n.String).ToHashSet();
            var count = performance.Parts[part].Part.Bars.Select(b => b.Neck.StringCount).Append(performance.Parts[part].Part.Neck.StringCount).Max();
            for (var number = count; number >= 1; number--)
                strings.Add((part, new StringNumber(number), moving.Contains(new StringNumber(number))));
            foreach (var note in performance.Parts[part].Notes) reach = Math.Max(reach, note.Pitch.Reach);
        }
        ReadOnlySpan<Func<(int Part, StringNumber String, bool Moves), object>> groupings =
        [
            s => (s.Part, s.String.Value),
            s => s.Moves ? (s.Part, s.String.Value) : (s.Part, 0),
            s => (s.Part, s.Moves ? 1 : 0),
            s => s.Part,
        ];
        var channels = new Dictionary<(int, StringNumber), int>();
        foreach (var grouping in groupings)
        {
            var groups = strings.GroupBy(grouping).ToList();
            if (groups.Count > 15 && grouping != groupings[^1]) continue;
            for (var i = 0; i < groups.Count; i++)
            {
                var channel = i % 15 + 1;
                foreach (var s in groups[i]) channels[(s.Part, s.String)] = channel >= 10 ? channel + 1 : channel;
            }
            break;
        }
        return new ChannelPlan(channels, Math.Max(12, (int)Math.Ceiling(reach / 100)));
    }
}
