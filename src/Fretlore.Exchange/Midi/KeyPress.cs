using Fretlore.Performance;

namespace Fretlore.Exchange.Midi;

/// <summary>A note as MIDI can tell it: one key of one channel, down from one tick to a later one.</summary>
internal sealed class KeyPress(PerformedNote note, int channel, int number, long on, long off)
{
    public PerformedNote Note { get; } = note;

    public int Channel { get; } = channel;

    public int Number { get; } = number;

    public long On { get; } = on;

    public long Off { get; private set; } = off;

    /// <summary>The presses for a part's notes, in order of time; on no channel is a key pressed while it is down.</summary>
    /// <remarks>
    /// Where strings share a channel, two of them in unison are one press when they start together, and otherwise the later one takes the key
    /// over and keeps it until both have ended.
    /// </remarks>
    public static List<KeyPress> Of(PerformedPart part, Func<PerformedNote, int> channelOf)
    {
        var presses = new List<KeyPress>();
        var last = new Dictionary<(int Channel, int Number), KeyPress>();
        foreach (var note in part.Notes)
        {
            var (channel, number) = (channelOf(note), Math.Clamp(note.Height.Midi, 0, 127));
            var on = MidiTime.TicksOf(note.Onset);
            var off = Math.Max(MidiTime.TicksOf(note.Release), on + 1);
            if (last.TryGetValue((channel, number), out var before) && before.Off > on)
            {
                if (before.Note.String != note.String) off = Math.Max(off, before.Off);
                if (before.On == on)
                {
                    before.Off = off;
                    continue;
                }
                before.Off = on;
            }
            var press = new KeyPress(note, channel, number, on, off);
            last[(channel, number)] = press;
            presses.Add(press);
        }
        return presses;
    }
}
