using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>The measures of one part.</summary>
internal sealed class PartWriter
{
    private readonly XmlOutput xml;
    private readonly Song song;
    private readonly SongReading reading;
    private readonly Part part;
    private readonly int index;
    private readonly StaffForm form;
    private readonly long[] divisions;
    private readonly SpanMarks spans;
    private readonly AttributesWriter attributes;
    private readonly DirectionWriter directions;
    private readonly HarmonyWriter harmonies;
    private readonly NoteWriter notes;
    private readonly ILookup<int, ChordMoment> chords;
    private readonly PlayedShapes shapes;

    public PartWriter(XmlOutput xml, Song song, SongReading reading, int index, StaffForm form, FrameWriter frames)
    {
        (this.xml, this.song, this.reading, this.index, this.form) = (xml, song, reading, index, form);
        part = song.Parts[index];
        divisions = Divisions.Of(song, part);
        spans = SpanMarks.Of(part);
        attributes = new AttributesWriter(xml, form);
        directions = new DirectionWriter(xml, form);
        harmonies = new HarmonyWriter(xml, form, frames);
        shapes = new PlayedShapes(song);
        notes = new NoteWriter(xml, reading, Joins.Of(song, part));
        chords = (index < reading.Parts.Length ? reading.Parts[index].Chords : []).ToLookup(c => c.Bar);
    }

    public void Write() => xml.Element("part", () =>
    {
        for (var bar = 0; bar < song.Bars.Count; bar++) WriteMeasure(bar);
    }, ("id", HeaderWriter.IdOf(index)));

    private void WriteMeasure(int index)
    {
        var bar = song.Bars[index];
        // A pickup within the song has the number of the bar before it; measures that are not counted have an X (MusicXML, measure).
        var number = bar.IsPickup && index > 0 ? "X" + XmlOutput.Digits(index) : XmlOutput.Digits(bar.Number);
        xml.Element("measure", () =>
        {
            BarLines.WriteLeft(xml, bar);
            attributes.Write(bar, part.Bars[index].Neck, divisions[index], RestBars.From(song, index), part.Bars[index].IsRest ? 0 : part.Bars[index].Repeats);
            if (part.Bars[index].Neck.Capo is { IsPartial: true } capo && (index == 0 || part.Bars[index - 1].Neck.Capo != capo)) directions.Words(PartialCapo.Words(capo), 0);
            WriteStaff(index, 1, form == StaffForm.Tablature);
            if (form == StaffForm.Both)
            {
                Move("backup", Units(bar.Length, index));
                WriteStaff(index, 2, true);
            }
            BarLines.WriteRight(xml, bar);
        }, ("number", number), ("implicit", bar.IsPickup ? "yes" : null));
    }

    private void WriteStaff(int index, int staff, bool isTablature)
    {
        var bar = song.Bars[index];
        var content = part.Bars[index];
        var above = staff == 1 ? MarksOf(index) : [];
        int? staffNumber = form.HasTwoStaves() ? staff : null;
        if (content.IsRest)
        {
            foreach (var (at, write) in above) write(Units(at, index));
            notes.WriteBarRest(Units(bar.Length, index), 4 * (staff - 1) + 1, staffNumber);
            return;
        }
        var accidentals = isTablature ? [] : Accidentals.Of(bar, content, reading);
        var position = Beats.Zero;
        for (var i = 0; i < content.Strands.Count; i++)
        {
            var strand = content.Strands[i];
            var voice = 4 * (staff - 1) + (int)strand.Kind + 1;
            if (position > strand.Start) Move("backup", Units(position, index) - Units(strand.Start, index));
            else if (position < strand.Start) Move("forward", Units(strand.Start, index) - Units(position, index), voice, staffNumber);
            WriteStrand(index, strand, i == 0 ? above : [], new NotePlace(null!, content.Neck.Capo, divisions[index], voice, staffNumber, isTablature, [], default, accidentals));
            position = strand.End;
        }
        if (position < bar.Length) Move("forward", Units(bar.Length, index) - Units(position, index), null, staffNumber);
    }

    private void WriteStrand(int bar, Strand strand, List<(Beats At, Action<long> Write)> above, NotePlace place)
    {
        var tuplets = TupletGroups.Of(strand.Events).ToArray();
        var beams = Beaming.Of(song.Bars[bar], strand.Events);
        var next = 0;
        for (var i = 0; i < strand.Events.Count; i++)
        {
            var item = strand.Events[i];
            for (; next < above.Count && (above[next].At < item.End || i == strand.Events.Count - 1); next++)
                above[next].Write(Units(above[next].At, bar) - Units(item.Start, bar));
            var (starts, stops) = spans[item];
            var onStaff = place.Staff is not 2;
            if (onStaff) WriteAbove(item, starts, stops, place.Voice);
            notes.Write(place with { Event = item, Beams = beams[i], Tuplet = (Array.Exists(tuplets, t => t.First == i), Array.Exists(tuplets, t => t.After == i + 1)) });
            if (onStaff) directions.Stops(stops, starts, place.Voice);
        }
    }

    private void WriteAbove(Event item, Stretch starts, Stretch stops, int voice)
    {
        if (item.Words is { } words) directions.Words(words, 0, voice);
        if (item.Dynamic is { } dynamic) directions.Dynamic(dynamic, Loudness.LevelOf(dynamic), voice);
        directions.Starts(starts, stops, voice);
    }

    // Tempo, feel and sections belong to all parts and stand in the first; chord symbols in their own part.
    private List<(Beats At, Action<long> Write)> MarksOf(int index)
    {
        var bar = song.Bars[index];
        var marks = new List<(Beats At, Action<long> Write)>();
        if (this.index == 0)
        {
            foreach (var section in song.Sections.Where(s => s.FirstBar == index)) marks.Add((Beats.Zero, offset => directions.Section(section.Name, offset)));
            if (bar.IsSegno) marks.Add((Beats.Zero, offset => directions.Target("segno", offset)));
            if (bar.IsCoda) marks.Add((Beats.Zero, offset => directions.Target("coda", offset)));
            foreach (var mark in bar.Tempos) marks.Add((mark.At, offset => directions.Tempo(mark.Tempo, offset)));
            if (bar.FeelChange is { } feel) marks.Add((Beats.Zero, _ => directions.Feel(feel)));
            if (bar.Jump != Jump.None) marks.Add((bar.Length, offset => directions.Jump(bar.Jump, offset)));
        }
        if (part.Bars[index] is { RoadMap: { } map, IsRest: true } && (index == 0 || part.Bars[index - 1].RoadMap != map || !part.Bars[index - 1].IsRest))
            marks.Add((Beats.Zero, offset => directions.Words("road map: " + map, offset)));
        AddHarmonies(index, marks);
        return [.. marks.OrderBy(m => m.At)];
    }

    private void AddHarmonies(int index, List<(Beats At, Action<long> Write)> marks)
    {
        var starts = shapes.Next(part.Bars[index]);
        foreach (var chord in chords[index])
        {
            starts.Remove(chord.At, out var shape);
            marks.Add((chord.At, offset => harmonies.Write(chord, shape, offset)));
        }
        foreach (var item in part.Bars[index].Strands.SelectMany(s => s.Events))
        {
            if (item.ChordSymbol is not { } symbol || chords[index].Any(c => c.At == item.Start)) continue;
            starts.Remove(item.Start, out var shape);
            marks.Add((item.Start, offset => harmonies.Write(symbol, shape, offset)));
        }
        foreach (var (at, shape) in starts.OrderBy(s => s.Key))
        {
            if (reading.ChordOf(shape.Name) is { } chord) marks.Add((at, offset => harmonies.Write(shape, chord, offset)));
        }
    }

    private long Units(Beats at, int bar) => (at * divisions[bar]).WholeCount(Beats.Quarter);

    private void Move(string direction, long units, int? voice = null, int? staff = null) => xml.Element(direction, () =>
    {
        xml.Number("duration", units);
        if (voice is { } number) xml.Number("voice", number);
        if (staff is { } onStaff && direction == "forward") xml.Number("staff", onStaff);
    });
}
