using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>What a note is in words, for screen readers: "String 5, fret 7, E3".</summary>
/// <remarks>A song has thousands of notes and few that differ in this.</remarks>
internal sealed class NoteTitles(SongReading reading)
{
    private readonly Dictionary<(StringNumber, Fret, Pitch, bool IsDead, bool IsHarmonic, Fret? Trill), string> made = [];

    public string Of(Note note)
    {
        var pitch = reading.SpellingOf(note.Id);
        var key = (note.String, note.Fret, pitch, note.IsDead, note.Harmonic is not null, note.Trill);
        if (made.TryGetValue(key, out var title)) return title;
        title = note.IsDead ? $"String {note.String}, dead note" : $"String {note.String}, fret {note.Fret}, {pitch}";
        if (note.Harmonic is not null) title += ", harmonic";
        if (note.Trill is { } trill) title += $", trilled with fret {trill}";
        return made[key] = title;
    }
}
