using Fretlore.Performance;
using NAudio.Midi;

namespace Fretlore.Exchange.Midi;

/// <summary>Writes a performance as a Standard MIDI File.</summary>
/// <remarks>
/// Format 1 with 960 ticks a quarter note: a conductor track with tempos, metres, keys and section markers, then a named track a part.
/// Each string has a channel of its own as long as there are enough (<see cref="ChannelPlan"/>), so a bend moves only its string. A time
/// whose denominator divides 960 (all binary values, triplets, quintuplets) is exact; others are off by half a tick at most, 0.26 ms at
/// 120 quarters a minute, and errors do not add up. The same performance gives the same bytes.
/// </remarks>
public static class MidiWriter
{
    public static void Write(Stream output, PerformedSong performance)
    {
        var events = new MidiEventCollection(1, MidiTime.TicksPerQuarter);
        events.AddTrack(ConductorTrack.Of(performance));
        var plan = ChannelPlan.For(performance);
        for (var part = 0; part < performance.Parts.Length; part++) events.AddTrack(PartTrackWriter.Of(performance, part, plan));

        // The library closes what it writes to; the caller's stream stays open.
        using var file = new MemoryStream();
        MidiFile.Export(file, events);
        output.Write(file.ToArray());
    }
}
