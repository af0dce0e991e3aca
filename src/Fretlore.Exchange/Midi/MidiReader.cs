using System.Globalization;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Midi.Reading;
using Fretlore.Exchange.MusicXml.Reading;
using Fretlore.Exchange.Reports;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;

namespace Fretlore.Exchange.Midi;

/// <summary>Reads a Standard MIDI File of format 0 or 1 as a song.</summary>
/// <remarks>
/// Never fails, whatever the bytes: a file that can't be used is refused with a reason. Times that note values give are kept to the tick;
/// what was played by hand is brought to the values it is nearest to, and the remarks say how sure that is. Notes are placed on a neck as a
/// hand plays them most easily, or where a file says tuning and strings, there.
/// </remarks>
public static class MidiReader
{
    // So many bars of silence at the end may be meant.
    private const int MostBarsAfter = 16;

    /// <summary>True when a file begins as MIDI files do.</summary>
    public static bool IsMidi(ReadOnlySpan<byte> file) => MidiChunks.IsMidi(file);

    public static ImportResult Read(byte[] file)
    {
        try
        {
            if (file.Length > ImportLimits.MostBytes) throw new RefusedFileException("The file is larger than any song that is taken.", "Export the tracks you want on their own.");
            var chunks = MidiChunks.Of(file);
            return Read(chunks, believesWords: true) ?? Read(chunks, believesWords: false)!;
        }
        catch (RefusedFileException refused)
        {
            return new ImportResult.Refused(refused.Message, refused.Remedy);
        }
    }

    // Null where words say how the song is written, and it sounds otherwise then: notes were changed since, and they count.
    private static ImportResult.Made? Read(MidiChunks file, bool believesWords)
    {
        var remarks = new Remarks();
        var conductor = new MidiConductor();
        var tracks = file.Tracks.Select((t, i) => TrackReader.Read(t, i + 1, conductor)).ToList();
        conductor.Sort();
        var title = tracks.Count > 0 && (tracks[0].Keys.Count == 0 || tracks.Count(t => t.Keys.Count > 0) == 1) ? tracks[0].Name : null;
        var parts = PartTracks.Of(tracks, remarks);
        if (parts.Count == 0) throw new RefusedFileException("The MIDI file holds no notes that can be played on a neck.", "Give a file with notes on other channels than that of the drums.");
        if (parts.Sum(p => p.Keys.Count) > ImportLimits.MostNotes) throw new RefusedFileException("The MIDI file has more notes than are taken.", "Export the tracks you want on their own.");
        var bars = MidiBars.Of(file, conductor, End(file, tracks, parts), remarks);
        var tempos = new MidiTempos(file, conductor, bars, remarks);
        var swung = SwungIn(bars, conductor, parts, remarks);
        var song = new RawSong { Info = new SongInfo(title ?? "Untitled", Rights: conductor.Rights) };
        WriteBars(song, conductor, bars, tempos, swung);
        var asStated = new bool[parts.Count];
        for (var i = 0; i < parts.Count; i++)
        {
            var reader = new MidiPartReader(bars, tempos, swung, remarks);
            var stated = believesWords ? reader.ReadStated(parts[i]) : null;
            asStated[i] = stated is not null;
            song.Parts.Add(stated ?? reader.Read(parts[i]));
        }
        foreach (var track in tracks)
        {
            foreach (var (what, tick) in track.LeftOut) remarks.Add(RemarkKind.LeftOut, what, track.Name, bars.Place(tick).Bar + 1);
        }
        remarks.Add(RemarkKind.LeftOut, "How hard each note is struck (its velocity) is not carried over.");
        var made = SongMaker.Make(song, remarks);
        if (Array.Exists(asStated, s => s))
        {
            var performance = Performer.Play(made);
            if (asStated.Where((s, i) => s && !StatedBars.SoundsAs(performance.Parts[i], parts[i], file.TicksPerQuarter)).Any()) return null;
        }
        return new ImportResult.Made(made, remarks.ToImmutable());
    }

    // For each bar the value that is swung: as the file says in words, or as its notes tell all through it.
    private static ValueBase?[] SwungIn(MidiBars bars, MidiConductor conductor, List<PartTrack> parts, Remarks remarks)
    {
        var swung = new ValueBase?[bars.All.Count];
        if (conductor.Feels.Count > 0)
        {
            var next = 0;
            for (var i = 0; i < swung.Length; i++)
            {
                swung[i] = i > 0 ? swung[i - 1] : null;
                for (; next < conductor.Feels.Count && conductor.Feels[next].Tick <= bars.All[i].Tick + 0.5; next++) swung[i] = conductor.Feels[next].Swung;
            }
            return swung;
        }
        var swing = SwingFinder.Of(bars, parts.SelectMany(p => p.Keys).Select(k => k.On));
        if (swing.Swung is not { } value) return swung;
        var word = value == ValueBase.Eighth ? "Eighths" : "16ths";
        remarks.Add(RemarkKind.Guessed, string.Create(CultureInfo.InvariantCulture, $"{word} are read as swung: {swing.Pairs} of {swing.All} pairs are long and short."));
        Array.Fill(swung, value);
        return swung;
    }

    // Up to the end of the tracks, unless that is long after the last note.
    private static long End(MidiChunks file, List<MidiTrack> tracks, List<PartTrack> parts)
    {
        var notes = parts.Max(p => p.Keys.Max(k => k.Off));
        var end = Math.Max(notes, tracks.Max(t => t.End));
        return end - notes <= MostBarsAfter * 4 * file.TicksPerQuarter ? end : notes;
    }

    private static void WriteBars(RawSong song, MidiConductor conductor, MidiBars bars, MidiTempos tempos, ValueBase?[] swung)
    {
        Key? key = null;
        var (number, nextKey, nextMarker) = (0, 0, 0);
        for (var i = 0; i < bars.All.Count; i++)
        {
            var bar = bars.All[i];
            // What stands nearer to this bar's start than to the next one's belongs to it.
            var until = i + 1 < bars.All.Count ? (bar.Tick + bars.All[i + 1].Tick) / 2 : double.MaxValue;
            for (; nextKey < conductor.Keys.Count && conductor.Keys[nextKey].Tick < until; nextKey++) key = XmlWords.Key(conductor.Keys[nextKey].Signs, conductor.Keys[nextKey].IsMinor ? "minor" : "major");
            string? section = null;
            for (; nextMarker < conductor.Markers.Count && conductor.Markers[nextMarker].Tick < until; nextMarker++) section = conductor.Markers[nextMarker].Name;
            if (section is not null) song.Sections.Add(new Section(section, i, 0));
            if (!bar.IsPickup) number++;
            song.Bars.Add(new Bar
            {
                Number = number,
                Meter = bar.Meter,
                Key = key,
                Length = bar.Length,
                IsPickup = bar.IsPickup,
                Tempos = tempos.Marks[i].ToValueList(),
                FeelChange = swung[i] != (i > 0 ? swung[i - 1] : null) ? new Feel(swung[i]) : null,
                EndLine = i == bars.All.Count - 1 ? BarLine.Final : BarLine.Single,
            });
        }
    }
}
