using Fretlore.Exchange.Midi.Reading;
using Fretlore.Guitar;
using Fretlore.Performance;
using Fretlore.Score;
using NAudio.Midi;

namespace Fretlore.Exchange.Midi;

/// <summary>The track of one part: programs and bend ranges, then notes and bends.</summary>
internal static class PartTrackWriter
{
    private const int Centre = 8192;

    // A point of a bend every 10 ticks, 5 ms at 120 quarters a minute.
    private const int BendStep = 10;

    public static List<MidiEvent> Of(PerformedSong performance, int part, ChannelPlan plan)
    {
        var written = performance.Parts[part];
        var events = new List<MidiEvent> { MidiText.Of(written.Part.Title, MetaEventType.SequenceTrackName, 0) };
        var channels = plan.Of(part);
        AddNeck(written.Part.Neck, [.. Enumerable.Range(1, written.Part.Neck.StringCount).Reverse().Select(n => plan[part, new StringNumber(n)])], events);
        foreach (var channel in channels) AddSetup(channel, GeneralMidi.ProgramOf(written.Part), plan.BendSemitones, events);

        var timed = new List<(long Tick, int Order, MidiEvent Event)>();
        foreach (var (tick, capo) in CaposOf(performance, written.Part))
            timed.Add((tick, 0, MidiText.Of(StatedNeck.CapoWord + (capo.IsOff ? "0" : capo.ToString()), MetaEventType.TextEvent, tick)));
        var presses = KeyPress.Of(written, note => plan[part, note.String]);
        AddBars(performance, written.Part, presses, n => plan.IsShared(part, n), timed);
        foreach (var press in presses)
        {
            foreach (var (tick, value) in BendsOf(press, performance.Tempo, plan.BendSemitones))
                timed.Add((tick, tick == press.On ? 1 : 3, new PitchWheelChangeEvent(tick, press.Channel, value)));
            timed.Add((press.On, 2, new NoteEvent(press.On, press.Channel, MidiCommandCode.NoteOn, press.Number, press.Note.Velocity)));
            timed.Add((press.Off, 0, new NoteEvent(press.Off, press.Channel, MidiCommandCode.NoteOff, press.Number, 64)));
        }
        var end = timed.Select(e => e.Tick).Append(MidiTime.TicksOf(performance.Length)).Max();
        foreach (var channel in channels) timed.Add((end, 4, new PitchWheelChangeEvent(end, channel, Centre)));

        // At one tick strings are let go first, then bent, then played. The sort is stable: equal ones stay in playing order.
        AddChanges(timed.OrderBy(e => e.Tick).ThenBy(e => e.Order).Select(e => e.Event), events);
        events.Add(new MetaEvent(MetaEventType.EndTrack, 0, end));
        return events;
    }

    // A wheel that is where it should be is left alone.
    private static void AddChanges(IEnumerable<MidiEvent> timed, List<MidiEvent> events)
    {
        var wheels = new Dictionary<int, int>();
        foreach (var item in timed)
        {
            if (item is PitchWheelChangeEvent wheel)
            {
                if (wheels.GetValueOrDefault(wheel.Channel, Centre) == wheel.Pitch) continue;
                wheels[wheel.Channel] = wheel.Pitch;
            }
            events.Add(item);
        }
    }

    // In words, so that strings and frets can be read again; other readers pass words over.
    private static void AddNeck(Neck neck, int[] channels, List<MidiEvent> events)
    {
        events.Add(MidiText.Of(StatedNeck.TuningWord + neck.Tuning, MetaEventType.TextEvent, 0));
        events.Add(MidiText.Of(StatedNeck.StringsWord + string.Join(' ', channels), MetaEventType.TextEvent, 0));
    }

    // Words say how each bar is written: a file can then be read as the page it was, to the tick.
    private static void AddBars(PerformedSong performance, Part part, List<KeyPress> presses, Func<StringNumber, bool> isShared, List<(long Tick, int Order, MidiEvent Event)> timed)
    {
        var keys = presses.CountBy(p => (p.Note.Note, p.Note.Bar)).ToDictionary();
        var shared = part.Neck.Tuning.LowToHigh.Select((_, i) => new StringNumber(i + 1)).Where(isShared).ToHashSet();
        for (var i = 0; i < performance.Bars.Length; i++)
        {
            var (bar, played) = (part.Bars[performance.Bars[i].Bar], i);
            if (!bar.Notes.Any()) continue;
            var tick = MidiTime.TicksOf(performance.Bars[i].Start);
            timed.Add((tick, 0, MidiText.Of(BarWords.Of(bar, id => keys.GetValueOrDefault((id, played)), shared), MetaEventType.TextEvent, tick)));
        }
    }

    private static IEnumerable<(long Tick, Capo Capo)> CaposOf(PerformedSong performance, Part part)
    {
        var capo = Capo.Off;
        foreach (var bar in performance.Bars)
        {
            var here = part.Bars[bar.Bar].Neck.Capo;
            if (here != capo) yield return (MidiTime.TicksOf(bar.Start), here);
            capo = here;
        }
    }

    // Registered parameter 0 is the bend range in semitones and cents; the null parameter after it closes the setting.
    private static void AddSetup(int channel, int program, int bendSemitones, List<MidiEvent> events)
    {
        events.Add(new PatchChangeEvent(0, channel, program));
        ReadOnlySpan<(int Controller, int Value)> settings = [(101, 0), (100, 0), (6, bendSemitones), (38, 0), (101, 127), (100, 127)];
        foreach (var (controller, value) in settings) events.Add(new ControlChangeEvent(0, channel, (MidiController)controller, value));
    }

    // Every note states its bend at the onset, so that what the one before left behind is taken back in time and not in its decay.
    private static IEnumerable<(long Tick, int Value)> BendsOf(KeyPress press, TempoMap tempo, int range)
    {
        var pitch = press.Note.Pitch;
        if (pitch.IsFlat)
        {
            yield return (press.On, Centre);
            yield break;
        }
        for (var tick = press.On; tick < press.Off; tick += BendStep) yield return (tick, At(tick));
        if (press.Off - 1 > press.On) yield return (press.Off - 1, At(press.Off));

        int At(long tick)
        {
            var seconds = tempo.SecondsAt((double)tick / MidiTime.TicksPerQuarter) - press.Note.OnsetSeconds;
            return Math.Clamp(Centre + (int)Math.Round(pitch.CentsAt(seconds) / (100.0 * range) * Centre), 0, 2 * Centre - 1);
        }
    }
}
