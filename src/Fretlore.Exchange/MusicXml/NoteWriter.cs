using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>What a note needs to know of the event and bar it stands in.</summary>
/// <param name="Event">Its event.</param>
/// <param name="Capo">The capo it is played under.</param>
/// <param name="Divisions">Divisions of a quarter note.</param>
/// <param name="Voice">From 1.</param>
/// <param name="Staff">1 or 2; null in a part of one staff.</param>
/// <param name="IsTablature">True on a tablature staff, which prints no accidentals.</param>
/// <param name="Beams">The words for its beams.</param>
/// <param name="Tuplet">Whether a tuplet bracket starts or stops.</param>
/// <param name="Accidentals">The accidentals the bar prints.</param>
internal sealed record NotePlace(
    Event Event, Capo Capo, long Divisions, int Voice, int? Staff, bool IsTablature, string[] Beams, (bool Starts, bool Stops) Tuplet, Dictionary<NoteId, string> Accidentals);

/// <summary>The notes and rests of an event.</summary>
internal sealed class NoteWriter(XmlOutput xml, SongReading reading, Joins joins)
{
    private readonly NotationsWriter notations = new(xml, joins);

    public void Write(NotePlace place)
    {
        foreach (var grace in place.Event.Graces) WriteGrace(grace, place);
        if (place.Event.IsRest) WriteRest(place);
        for (var i = 0; i < place.Event.Notes.Count; i++) WriteNote(place.Event.Notes[i], i, place);
    }

    /// <summary>A rest for a whole bar.</summary>
    public void WriteBarRest(long duration, int voice, int? staff) => xml.Element("note", () =>
    {
        xml.Empty("rest", ("measure", "yes"));
        xml.Number("duration", duration);
        xml.Number("voice", voice);
        if (staff is { } number) xml.Number("staff", number);
    });

    private void WriteRest(NotePlace place) => xml.Element("note", () =>
    {
        xml.Empty("rest");
        WriteDuration(place);
        xml.Number("voice", place.Voice);
        WriteValue(place);
        if (place.Staff is { } number) xml.Number("staff", number);
        notations.WriteRest(place);
    });

    private void WriteNote(Note note, int index, NotePlace place) => xml.Element("note", () =>
    {
        if (index > 0) xml.Empty("chord");
        WritePitch(note);
        WriteDuration(place);
        if (note.IsTiedFromBefore && joins.Arrives(note)) xml.Empty("tie", ("type", "stop"));
        if (joins.Departs(note, Attack.Held)) xml.Empty("tie", ("type", "start"));
        xml.Number("voice", place.Voice);
        WriteValue(place, note);
        WriteHead(note);
        if (place.Staff is { } number) xml.Number("staff", number);
        for (var level = 0; index == 0 && level < place.Beams.Length; level++)
            xml.Text("beam", place.Beams[level], ("number", XmlOutput.Digits(level + 1)));
        notations.Write(note, index == 0, place);
        WritePlay(note);
    });

    private void WriteGrace(Note note, NotePlace place) => xml.Element("note", () =>
    {
        var several = place.Event.Graces.Count > 1;
        xml.Empty("grace", ("slash", several ? null : "yes"));
        WritePitch(note);
        xml.Number("voice", place.Voice);
        xml.Text("type", several ? "16th" : "eighth");
        if (!place.IsTablature && place.Accidentals.TryGetValue(note.Id, out var accidental)) xml.Text("accidental", accidental);
        WriteHead(note);
        if (place.Staff is { } number) xml.Number("staff", number);
        notations.WriteGrace(note, place);
        WritePlay(note);
    });

    private void WritePitch(Note note) => xml.Element("pitch", () =>
    {
        var pitch = reading.SpellingOf(note.Id);
        xml.Text("step", pitch.Name.Step.ToString());
        if (pitch.Name.Alteration != 0) xml.Number("alter", pitch.Name.Alteration);
        xml.Number("octave", pitch.Octave);
    });

    private void WriteDuration(NotePlace place) => xml.Number("duration", (place.Event.Duration * place.Divisions).WholeCount(Beats.Quarter));

    private void WriteValue(NotePlace place, Note? note = null)
    {
        xml.Text("type", Names.TypeOf(place.Event.Value.Base));
        for (var i = 0; i < place.Event.Value.Dots; i++) xml.Empty("dot");
        if (note is not null && !place.IsTablature && place.Accidentals.TryGetValue(note.Id, out var accidental)) xml.Text("accidental", accidental);
        if (place.Event.Tuplet is not { } tuplet) return;
        xml.Element("time-modification", () =>
        {
            xml.Number("actual-notes", tuplet.Count);
            xml.Number("normal-notes", tuplet.InTimeOf);
            if (tuplet.Unit != place.Event.Value.Base) xml.Text("normal-type", Names.TypeOf(tuplet.Unit));
        });
    }

    private void WriteHead(Note note)
    {
        if (note.IsDead) xml.Text("notehead", "x", ("parentheses", note.IsGhost ? "yes" : null));
        else if (note.IsGhost) xml.Text("notehead", "normal", ("parentheses", "yes"));
        else if (note.Harmonic is not null) xml.Text("notehead", "diamond", ("filled", "no"));
    }

    private void WritePlay(Note note)
    {
        if (note.IsPalmMuted) xml.Element("play", () => xml.Text("mute", "palm"));
    }
}
