using Fretlore.Performance;
using NAudio.Midi;

namespace Fretlore.Exchange.Midi;

/// <summary>The track of one part: programs and bend ranges, then notes and bends.</summary>
internal static class PartTrack
{
    private const int Centre = 8192;

    // A point of a bend every 10 ticks, 5 ms at 120 quarters a minute.
    private const int BendStep = 10;

    public static List<MidiEvent> Of(PerformedSong performance, int part, ChannelPlan plan)
    {
        var written = performance.Parts[part];
        var events = new List<MidiEvent> { MidiText.Of(written.Part.Title, MetaEventType.SequenceTrackName, 0) };
        var channels = plan.Of(part);
        foreach (var channel in channels) AddSetup(channel, GeneralMidi.ProgramOf(written.Part), plan.BendSemitones, events);

        var bends = channels.ToDictionary(c => c, _ => Centre);
        var timed = new List<(long Tick, int Order, MidiEvent Event)>();
        foreach (var note in written.Notes)
        {
            var channel = plan[part, note.String];
            var (on, off) = (MidiTime.TicksOf(note.Onset), MidiTime.TicksOf(note.Release));
            if (off <= on) off = on + 1;
            var number = Math.Clamp(note.Height.Midi, 0, 127);
            foreach (var (tick, value) in BendsOf(note, performance.Tempo, on, off, plan.BendSemitones))
            {
                if (bends[channel] == value) continue;
                bends[channel] = value;
                timed.Add((tick, tick == on ? 1 : 3, new PitchWheelChangeEvent(tick, channel, value)));
            }
            timed.Add((on, 2, new NoteEvent(on, channel, MidiCommandCode.NoteOn, number, note.Velocity)));
            timed.Add((off, 0, new NoteEvent(off, channel, MidiCommandCode.NoteOff, number, 64)));
        }
        var end = timed.Select(e => e.Tick).Append(MidiTime.TicksOf(performance.Length)).Max();
        foreach (var (channel, value) in bends)
        {
            if (value != Centre) timed.Add((end, 4, new PitchWheelChangeEvent(end, channel, Centre)));
        }
        // At one tick strings are let go first, then bent, then played. The sort is stable: equal ones stay in playing order.
        events.AddRange(timed.OrderBy(e => e.Tick).ThenBy(e => e.Order).Select(e => e.Event));
        events.Add(new MetaEvent(MetaEventType.EndTrack, 0, end));
        return events;
    }

    // Registered parameter 0 is the bend range in semitones and cents; the null parameter after it closes the setting.
    private static void AddSetup(int channel, int program, int bendSemitones, List<MidiEvent> events)
    {
        events.Add(new PatchChangeEvent(0, channel, program));
        ReadOnlySpan<(int Controller, int Value)> settings = [(101, 0), (100, 0), (6, bendSemitones), (38, 0), (101, 127), (100, 127)];
        foreach (var (controller, value) in settings) events.Add(new ControlChangeEvent(0, channel, (MidiController)controller, value));
    }

    // Every note states its bend at the onset, so that what the one before left behind is taken back in time and not in its decay.
    private static IEnumerable<(long Tick, int Value)> BendsOf(PerformedNote note, TempoMap tempo, long on, long off, int range)
    {
        if (note.Pitch.IsFlat)
        {
            yield return (on, Centre);
            yield break;
        }
        for (var tick = on; tick < off; tick += BendStep) yield return (tick, At(tick));
        if (off - 1 > on) yield return (off - 1, At(off));

        int At(long tick)
        {
            var seconds = tempo.SecondsAt((double)tick / MidiTime.TicksPerQuarter) - note.OnsetSeconds;
            var cents = note.Pitch.CentsAt(seconds);
            return Math.Clamp(Centre + (int)Math.Round(cents / (100.0 * range) * Centre), 0, 2 * Centre - 1);
        }
    }
}
