using Fretlore.Exchange.Midi.Reading;
using Fretlore.Exchange.Sheets;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using NAudio.Midi;

namespace Fretlore.Exchange.Midi;

/// <summary>The first track: title, tempo map, metres, keys and section markers.</summary>
internal static class ConductorTrack
{
    public static List<MidiEvent> Of(PerformedSong performance)
    {
        var song = performance.Song;
        var events = new List<MidiEvent> { MidiText.Of(song.Info.Title, MetaEventType.SequenceTrackName, 0) };
        if (song.Info.Rights is { } rights) events.Add(MidiText.Of(rights, MetaEventType.Copyright, 0));
        AddBars(performance, events);
        foreach (var change in performance.Tempo.Changes)
            events.Add(new TempoEvent(Microseconds(change.Tempo), MidiTime.TicksOf(change.At)));
        var ordered = events.OrderBy(e => e.AbsoluteTime).ToList();
        ordered.Add(new MetaEvent(MetaEventType.EndTrack, 0, MidiTime.TicksOf(performance.Length)));
        return ordered;
    }

    private static void AddBars(PerformedSong performance, List<MidiEvent> events)
    {
        var song = performance.Song;
        var sections = song.Sections.ToLookup(s => s.FirstBar, s => s.Name);
        (Meter Meter, Beats Length)? metre = null;
        Key? key = null;
        var (feels, feel) = (FeelsOf(song), Feel.Straight);
        foreach (var played in performance.Bars)
        {
            var bar = song.Bars[played.Bar];
            var tick = MidiTime.TicksOf(played.Start);
            if (metre != (bar.Meter, bar.Length))
            {
                metre = (bar.Meter, bar.Length);
                events.Add(MetreAt(bar.Meter, bar.Length, tick));
            }
            if (bar.Key is { } inForce && inForce != key)
            {
                key = inForce;
                events.Add(KeyAt(inForce, tick));
            }
            if (feels[played.Bar] != feel)
            {
                feel = feels[played.Bar];
                events.Add(MidiText.Of(StatedFeel.Word + SheetWords.Of(feel), MetaEventType.TextEvent, tick));
            }
            foreach (var name in sections[played.Bar]) events.Add(MidiText.Of(name, MetaEventType.Marker, tick));
        }
    }

    // For each written bar the feel in force.
    private static Feel[] FeelsOf(Song song)
    {
        var feels = new Feel[song.Bars.Count];
        for (var i = 0; i < feels.Length; i++) feels[i] = song.Bars[i].FeelChange ?? (i > 0 ? feels[i - 1] : Feel.Straight);
        return feels;
    }

    // A file has no pickup bars: a short bar is told as a metre of its length, so that bar lines fall where they do on the page.
    private static TimeSignatureEvent MetreAt(Meter meter, Beats length, long tick)
    {
        var (count, unit) = (meter.Count, meter.Unit);
        if (length != meter.Length)
        {
            for (unit = 4; unit < 64 && (length * unit / 4).Denominator != 1; unit *= 2) { }
            count = (int)Math.Max(1, (length * unit / 4).WholeCount(Beats.Quarter));
        }
        // The standard counts the metronome's click in 24ths of a quarter note.
        var click = Math.Clamp(96 / unit * (unit == meter.Unit ? meter.Groups[0] : 1), 1, 255);
        return new TimeSignatureEvent(tick, Math.Min(count, 255), int.Log2(unit), click, 8);
    }

    // Keys beyond seven signs have no number in the standard; their simpler enharmonic sounds the same.
    private static KeySignatureEvent KeyAt(Key key, long tick)
    {
        var signs = key.Signature;
        while (signs > 7) signs -= 12;
        while (signs < -7) signs += 12;
        return new KeySignatureEvent(signs, key.IsMinor ? 1 : 0, tick);
    }

    private static int Microseconds(Tempo tempo) => (int)Math.Clamp(Math.Round(tempo.SecondsPerQuarter * 1e6), 1, 0xFFFFFF);
}
