using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Tests.Songs;

/// <summary>A reading with the nearest spelling in each bar's key, for tests of stages that need spellings and not their reasons.</summary>
internal static class PlainReading
{
    public static SongReading Of(Song song)
    {
        var spellings = new Pitch[song.NoteCount];
        foreach (var part in song.Parts)
        {
            for (var bar = 0; bar < part.Bars.Count; bar++)
            {
                foreach (var note in part.Bars[bar].Notes) spellings[note.Id.Index] = Spell(note.Sounding, song.Bars[bar].Key?.Signature ?? 0);
            }
        }
        return new SongReading(
            [.. spellings], [.. new Interval[song.NoteCount]], [.. song.Parts.Select(_ => new PartReading([], []))], []);
    }

    private static Pitch Spell(Height height, int signature)
    {
        var name = Enumerable.Range(signature - 4, 12).Select(NoteName.FromFifths).First(n => n.PitchClass == height.PitchClass);
        return height.Spell(name);
    }
}
