using System.Globalization;
using System.Text;
using Fretlore.Exchange.Import;
using NAudio.Midi;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Reads the events of a track. The library makes them; where each ends is looked at first, so that no length within it is believed.</summary>
internal sealed class TrackReader : IDisposable
{
    private const int MostEvents = 4_000_000;

    private readonly byte[] bytes;
    private readonly BinaryReader reader;
    private readonly MidiConductor conductor;
    private readonly Dictionary<(int Channel, int Number), MidiKey> down = [];
    private readonly WheelState[] wheels = [.. Enumerable.Range(0, 17).Select(_ => new WheelState())];
    private readonly MidiTrack made = new();
    private readonly int number;
    private int at;
    private long tick;

    private TrackReader(ReadOnlyMemory<byte> track, int number, MidiConductor conductor)
    {
        (bytes, this.number, this.conductor) = (track.ToArray(), number, conductor);
        reader = new BinaryReader(new MemoryStream(bytes, writable: false));
    }

    /// <summary>Reads a track.</summary>
    /// <param name="track">Its bytes.</param>
    /// <param name="number">Its place in the file, from 1.</param>
    /// <param name="conductor">Takes tempos, metres, keys and markers, wherever they stand.</param>
    public static MidiTrack Read(ReadOnlyMemory<byte> track, int number, MidiConductor conductor)
    {
        using var reader = new TrackReader(track, number, conductor);
        return reader.Read();
    }

    public void Dispose() => reader.Dispose();

    private MidiTrack Read()
    {
        MidiEvent? before = null;
        for (var events = 0; at < bytes.Length; events++)
        {
            if (events == MostEvents) throw new RefusedFileException("The MIDI file has more events than are taken.", "Export the tracks you want on their own.");
            var start = at;
            tick += Variable(start);
            if (at >= bytes.Length) throw Broken(start);
            var status = bytes[at] >= 0x80 ? bytes[at++] : 0;
            var end = EndOf(status, before, start);
            // Of what a sheet has no use for only the length is looked at.
            if (status is not (0xF0 or 0xF7))
            {
                var item = Event(start, end, before);
                if (item is null) LeaveOut("An event of an unknown kind is not carried over.");
                else
                {
                    if (status is > 0 and < 0xF0 || status == 0) before = item;
                    if (MidiEvent.IsEndTrack(item)) break;
                    Take(item);
                }
            }
            at = end;
        }
        made.End = tick;
        foreach (var key in down.Values) key.Off = Math.Max(tick, key.On + 1);
        if (down.Count > 0) LeaveOut("The end of a note that is never let go is not carried over.");
        return made;
    }

    // Where the event that has this status ends.
    private int EndOf(int status, MidiEvent? before, int start)
    {
        var kind = status > 0 ? status : before is null ? throw Broken(start) : (int)before.CommandCode;
        if (kind is 0xFF or 0xF0 or 0xF7)
        {
            if (kind == 0xFF) at++;
            var length = at < bytes.Length ? Variable(start) : throw Broken(start);
            return length <= bytes.Length - at ? at + (int)length : throw Broken(start);
        }
        if (kind > 0xF0) throw Broken(start);
        var data = (kind & 0xF0) is 0xC0 or 0xD0 ? 1 : 2;
        if (data > bytes.Length - at || bytes.AsSpan(at, data).ContainsAnyInRange((byte)0x80, (byte)0xFF)) throw Broken(start);
        return at + data;
    }

    private MidiEvent? Event(int start, int end, MidiEvent? before)
    {
        reader.BaseStream.Position = start;
        try
        {
            var item = MidiEvent.ReadNextEvent(reader, before);
            return reader.BaseStream.Position == end ? item : null;
        }
        catch (Exception e) when (e is FormatException or IOException or ArgumentException or InvalidOperationException or NotSupportedException or OverflowException)
        {
            return null;
        }
    }

    // A number of up to four bytes, seven bits in each.
    private long Variable(int start)
    {
        long value = 0;
        for (var i = 0; i < 4; i++)
        {
            if (at >= bytes.Length) throw Broken(start);
            var next = bytes[at++];
            value = value << 7 | (uint)(next & 0x7F);
            if (next < 0x80) return value;
        }
        throw Broken(start);
    }

    private RefusedFileException Broken(int place) => new(
        string.Create(CultureInfo.InvariantCulture, $"The MIDI file is broken: what stands at byte {place} of track {number} is no event."),
        "Export it again from the program it comes from.");

    private void Take(MidiEvent item)
    {
        switch (item)
        {
            case NoteEvent note when MidiEvent.IsNoteOn(note):
                Press(note);
                break;
            case NoteEvent note when MidiEvent.IsNoteOff(note):
                Release(note.Channel, note.NoteNumber);
                break;
            case NoteEvent:
                LeaveOut("Pressure on a key is not carried over.");
                break;
            case PitchWheelChangeEvent wheel:
                wheels[wheel.Channel].Value = wheel.Pitch;
                Bend(wheel.Channel);
                break;
            case ControlChangeEvent control:
                Control(control);
                break;
            case PatchChangeEvent program:
                if (!made.Programs.TryAdd(program.Channel, program.Patch) && made.Programs[program.Channel] != program.Patch) LeaveOut("A change of sound is not carried over.");
                break;
            case TempoEvent tempo:
                if (tempo.MicrosecondsPerQuarterNote > 0) conductor.Tempos.Add((tick, tempo.MicrosecondsPerQuarterNote));
                break;
            case TimeSignatureEvent metre:
                if (metre is { Numerator: >= 1 and <= 64, Denominator: >= 0 and <= 6 }) conductor.Metres.Add((tick, metre.Numerator, 1 << metre.Denominator));
                break;
            case KeySignatureEvent key:
                if (Math.Abs(key.SharpsFlats) <= 7) conductor.Keys.Add((tick, key.SharpsFlats, key.MajorMinor == 1));
                break;
            case TextEvent text:
                Read(text);
                break;
            case MetaEvent:
                break;
            default:
                LeaveOut("Pressure on a channel is not carried over.");
                break;
        }
    }

    private void Read(TextEvent item)
    {
        var text = TextOf(item.Data);
        if (text.Length == 0) return;
        switch (item.MetaEventType)
        {
            case MetaEventType.SequenceTrackName:
                made.Name ??= text;
                break;
            case MetaEventType.Copyright:
                conductor.Rights ??= text;
                break;
            case MetaEventType.Marker:
                conductor.Markers.Add((tick, text));
                break;
            case MetaEventType.TextEvent:
                made.Texts.Add((tick, text));
                if (StatedFeel.Of(text) is { } feel) conductor.Feels.Add((tick, feel.Swung));
                break;
            case MetaEventType.Lyric:
                LeaveOut("The words to sing are not carried over.");
                break;
            default:
                break;
        }
    }

    // UTF-8, as files of today have it; else each byte a character, as the 1996 standard leaves it.
    private static string TextOf(byte[] data)
    {
        var text = Encoding.UTF8.GetString(data);
        if (text.Contains('\uFFFD', StringComparison.Ordinal)) text = Encoding.Latin1.GetString(data);
        return string.Join(' ', new string([.. text.Select(c => char.IsControl(c) ? ' ' : c)]).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    private void Press(NoteEvent note)
    {
        Release(note.Channel, note.NoteNumber);
        var key = new MidiKey { Channel = note.Channel, Number = note.NoteNumber, On = tick };
        down[(note.Channel, note.NoteNumber)] = key;
        made.Keys.Add(key);
        if (made.Keys.Count > ImportLimits.MostNotes) throw new RefusedFileException("The MIDI file has more notes than are taken.", "Export the tracks you want on their own.");
    }

    private void Release(int channel, int key)
    {
        if (down.Remove((channel, key), out var held)) held.Off = Math.Max(tick, held.On + 1);
    }

    private void Control(ControlChangeEvent control)
    {
        var wheel = wheels[control.Channel];
        switch ((int)control.Controller)
        {
            case 101:
                wheel.Parameter = control.ControllerValue << 7 | (wheel.Parameter & 0x7F);
                break;
            case 100:
                wheel.Parameter = (wheel.Parameter & ~0x7F) | control.ControllerValue;
                break;
            case 6 when wheel.Parameter == 0:
                wheel.Semitones = control.ControllerValue;
                Bend(control.Channel);
                break;
            case 38 when wheel.Parameter == 0:
                wheel.Cents = control.ControllerValue;
                Bend(control.Channel);
                break;
            case 6 or 38 or 98 or 99 or >= 120:
                break;
            case 1:
                LeaveOut("The modulation wheel is not carried over.");
                break;
            case 64:
                LeaveOut("The sustain pedal is not carried over.");
                break;
            default:
                LeaveOut("A controller such as volume, balance or an effect is not carried over.");
                break;
        }
    }

    private void Bend(int channel)
    {
        if (!made.Wheels.TryGetValue(channel, out var moves)) made.Wheels[channel] = moves = [];
        var cents = wheels[channel].InCents;
        if (moves.Count == 0 ? Math.Abs(cents) > 0.01 : Math.Abs(moves[^1].Cents - cents) > 0.01) moves.Add((tick, cents));
    }

    private void LeaveOut(string what) => made.LeftOut.TryAdd(what, tick);

    /// <summary>The wheel of a channel: two semitones each way until registered parameter 0 says otherwise (MIDI 1.0).</summary>
    private sealed class WheelState
    {
        public int Value { get; set; } = 8192;

        public int Parameter { get; set; } = 0x3FFF;

        public int Semitones { get; set; } = 2;

        public int Cents { get; set; }


        public double InCents => (Value - 8192) / 8192.0 * (Semitones * 100 + Cents);
    }
}
