using Fretlore.Guitar;
using Fretlore.Hands.Plans;
using Fretlore.Performance;
using Fretlore.Practice.Data;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Practice.Making;

/// <summary>The parts with their notes in time.</summary>
internal sealed class PartMaker(PerformedSong performed, SongReading reading, SongHands hands, TheoryMaker theory)
{
    // Guitars stand a little to either side of each other, one alone in the middle.
    private const double Aside = 0.3;

    public PartData Of(int index)
    {
        var (part, notes) = (performed.Parts[index].Part, performed.Parts[index].Notes);
        return new PartData
        {
            Name = part.Name,
            Title = part.Title,
            Strings = [.. part.Neck.Tuning.LowToHigh.Select(pitch => new StringData(pitch.ToString(), pitch.Midi))],
            Capo = part.Neck.Capo.Fret,
            CapoStrings = StringsOf(part.Neck.Capo),
            Capos = CaposOf(part) is [_, ..] moves ? moves : null,
            Frets = part.Neck.FretCount,
            Aside = performed.Parts.Length == 1 ? 0 : index % 2 == 0 ? -Aside : Aside,
            Notes = [.. notes.Select(note => NoteOf(note))],
            Chords = theory.ChordsOf(index),
            Scales = theory.ScalesOf(index),
        };
    }

    private static int[]? StringsOf(Capo capo) => capo.IsPartial ? [capo.Lowest.Value, capo.Highest.Value] : null;

    private List<CapoData> CaposOf(Part part)
    {
        var moves = new List<CapoData>();
        var now = part.Neck.Capo;
        foreach (var bar in performed.Bars)
        {
            var capo = part.Bars[bar.Bar].Neck.Capo;
            if (capo != now) moves.Add(new CapoData(Seconds.Rounded(performed.Tempo.SecondsAt(bar.Start)), capo.Fret, StringsOf(capo)));
            now = capo;
        }
        return moves;
    }

    /// <summary>The notes of a part that begin in a stretch of time.</summary>
    public IEnumerable<NoteData> NotesOf(int index, double start, double end) =>
        from note in performed.Parts[index].Notes
        where note.OnsetSeconds >= start - 1e-6 && note.OnsetSeconds < end - 1e-6
        select NoteOf(note);

    private NoteData NoteOf(PerformedNote note) =>
        new()
        {
            Id = note.Note.Index,
            Held = note.HeldNotes.Count == 0 ? null : [.. note.HeldNotes.Select(held => held.Index)],
            On = Seconds.Rounded(note.OnsetSeconds),
            Off = Seconds.Rounded(note.ReleaseSeconds),
            String = note.String.Value,
            Fret = note.Fret.Number,
            Pitch = reading.SpellingOf(note.Note).ToString(),
            Midi = note.Height.Midi,
            Finger = hands.Of(note.Note).Finger switch
            {
                null => null,
                Finger.Thumb => "T",
                var finger => ((int)finger).ToString(System.Globalization.CultureInfo.InvariantCulture),
            },
            Role = theory.RoleOf(reading.Roles[note.Note.Index]),
            How = HowOf(note),
        };

    private static string? HowOf(PerformedNote note) => note switch
    {
        { Damping: Damping.Dead } => "dead",
        { Harmonic: not null } => "harmonic",
        { Attack: Attack.HammerOn or Attack.HammerFromNowhere } => "hammer",
        { Attack: Attack.PullOff } => "pull",
        { Attack: Attack.Tap } => "tap",
        { Attack: Attack.Glide or Attack.PickedGlide } => "slide",
        { Pitch.Moves.Count: > 0 } => "bend",
        { Pitch.Vibrato.Count: > 0 } => "vibrato",
        { Damping: Damping.Palm } => "palm mute",
        _ => null,
    };
}
