using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts;

/// <summary>The part of an event that a call-out says; two events with one spoken form sound alike when told.</summary>
internal static class SpokenForm
{
    /// <summary>The event without what is not said: ids, place in the bar, words on the page; and without its value in a walk-through.</summary>
    public static Event Of(Event source, Detail detail) => new()
    {
        Start = Beats.Zero,
        Value = detail == Detail.NoteByNote ? source.Value : new NoteValue(ValueBase.Quarter),
        Tuplet = detail == Detail.NoteByNote ? source.Tuplet : null,
        Notes = source.Notes.OrderByDescending(n => n.String.Value).Select(n => Of(n, detail)).ToValueList(),
        Graces = source.Graces.Select(n => Of(n, detail)).ToValueList(),
        Stroke = detail == Detail.NoteByNote || source.IsRest ? source.Stroke : Stroke.None,
        PickingFinger = detail == Detail.NoteByNote ? source.PickingFinger : null,
        Roll = source.Roll,
        HasFermata = source.HasFermata,
        Spans = detail == Detail.NoteByNote ? source.Spans : Spans.None,
    };

    private static Note Of(Note note, Detail detail)
    {
        // A note that goes on is not muted, touched or stopped anew.
        var held = note.Attack == Attack.Held;
        var harmonic = held ? null : note.Harmonic;
        return note with
        {
            Id = default,
            Sounding = default,
            IsHeldOn = false,
            Finger = detail == Detail.NoteByNote ? note.Finger : null,
            Fret = note.Harmonic is { Kind: HarmonicKind.Natural } natural ? natural.TouchedAt : note.Fret,
            Harmonic = harmonic is { Kind: HarmonicKind.Pinch } ? new Harmonic(HarmonicKind.Pinch, note.Fret) : harmonic,
            Bend = note.Bend is { FromCents: 0, ToCents.Count: 0 } ? null : note.Bend,
            Vibrato = note.Vibrato.Width == VibratoWidth.None ? default : note.Vibrato,
            IsDead = note.IsDead && !held,
            IsPalmMuted = note.IsPalmMuted && !held,
            LetsRing = note.LetsRing && !held,
        };
    }
}
