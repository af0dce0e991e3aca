using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Subjects;

/// <summary>Bars taken out of their surroundings: what was joined to a note before the first bar is picked, what held on past the last ends with it.</summary>
internal static class CutBars
{
    public static ValueList<PartBar> Of(IEnumerable<PartBar> bars)
    {
        var cut = bars.ToArray();
        var sounded = new HashSet<(StrandKind, int)>();
        for (var i = 0; i < cut.Length; i++)
        {
            var isLast = i + 1 == cut.Length;
            cut[i] = cut[i] with { Repeats = cut[i].Repeats > i ? 0 : cut[i].Repeats, Strands = cut[i].Strands.Select(s => Strand(s, sounded, isLast)).ToValueList() };
        }
        return cut.ToValueList();
    }

    private static Strand Strand(Strand strand, HashSet<(StrandKind, int)> sounded, bool isLast)
    {
        var events = strand.Events.ToArray();
        var lastOfString = new Dictionary<int, int>();
        for (var e = 0; e < events.Length; e++)
        {
            foreach (var note in events[e].Notes) lastOfString[note.String.Value] = e;
        }
        for (var e = 0; e < events.Length; e++)
        {
            var at = e;
            events[e] = events[e] with { Graces = Notes(events[e].Graces, _ => false), Notes = Notes(events[e].Notes, note => isLast && lastOfString[note.String.Value] == at) };
        }
        return strand with { Events = events.ToValueList() };

        ValueList<Note> Notes(ValueList<Note> notes, Func<Note, bool> ends) => notes.Select(note =>
        {
            var isJoined = note.Attack is Attack.Held or Attack.Glide or Attack.PickedGlide or Attack.HammerOn or Attack.PullOff;
            var isFirst = sounded.Add((strand.Kind, note.String.Value));
            return note with
            {
                Attack = isFirst && isJoined ? Attack.Picked : note.Attack,
                IsHeldOn = note.IsHeldOn && !ends(note),
            };
        }).ToValueList();
    }
}
