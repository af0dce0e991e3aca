using System.Globalization;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Licks;

/// <summary>A lick's hand plan in figures, as guitar music prints it: 1 to 4 for the fingers, 0 for an open string, notes of one moment together, low string first.</summary>
internal static class LickFingers
{
    /// <summary>Such as "Position 5: 1 3 0 1; 8: 1 134 | 1 3", with a line between bars; empty where nothing is held.</summary>
    public static string Of(ValueList<PartBar> content, SongHands plan)
    {
        var words = new List<string>();
        var position = 0;
        foreach (var bar in content)
        {
            if (words.Count > 0) words.Add("|");
            foreach (var notes in Moments(bar))
            {
                var held = notes.Select(n => plan.Of(n.Id)).FirstOrDefault(hand => hand.Finger is not null);
                if (held.Finger is not null && held.Position != position)
                {
                    if (words.Count > 0 && words[^1] != "|") words[^1] += ";";
                    words.Add(string.Create(CultureInfo.InvariantCulture, $"{held.Position}:"));
                    position = held.Position;
                }
                words.Add(string.Concat(notes.Select(note => Figure(note, plan.Of(note.Id)))));
            }
        }
        return position == 0 ? "" : $"{(words[0].EndsWith(':') ? "Position" : "Fingers:")} {string.Join(' ', words)}";
    }

    // What is picked or slurred together, grace notes before it.
    private static IEnumerable<Note[]> Moments(PartBar bar) => bar.Strands.SelectMany(strand => strand.Events).Where(e => !e.IsRest).GroupBy(e => e.Start).OrderBy(g => g.Key)
        .SelectMany(g => g.SelectMany(e => e.Graces).Select(grace => (Note[])[grace]).Append([.. g.SelectMany(e => e.Notes).OrderByDescending(n => n.String.Value)]))
        .Select(notes => notes.Where(n => !n.IsTiedFromBefore).ToArray()).Where(notes => notes.Length > 0);

    private static string Figure(Note note, NoteHand hand) => hand.Finger is { } finger
        ? finger == Finger.Thumb ? "T" : ((int)finger).ToString(CultureInfo.InvariantCulture)
        : note.Fret.IsOpen && !note.IsDead ? "0" : "x";
}
