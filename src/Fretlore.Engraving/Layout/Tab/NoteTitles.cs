using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>What a note of the tablature is in words, for screen readers: "String 5, fret 7, E3".</summary>
/// <remarks>A song has thousands of notes and few that differ in this.</remarks>
internal sealed class NoteTitles(SongReading reading)
{
    private readonly Dictionary<(StringNumber, Fret, Pitch, bool IsDead, bool IsHarmonic), string> made = [];

    public string Of(Note note)
    {
        var pitch = reading.SpellingOf(note.Id);
        var key = (note.String, note.Fret, pitch, note.IsDead, note.Harmonic is not null);
        if (made.TryGetValue(key, out var title)) return title;
        title = note.IsDead ? $"String {note.String}, dead note" : $"String {note.String}, fret {note.Fret}, {pitch}";
        return made[key] = note.Harmonic is null ? title : title + ", harmonic";
    }
}
