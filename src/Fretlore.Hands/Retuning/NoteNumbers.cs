using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>Numbers a song's notes anew, so that they are dense again.</summary>
internal static class NoteNumbers
{
    public static Song Anew(Song song)
    {
        var next = 0;
        var numbered = song with
        {
            Parts = song.Parts.Select(part => part with { Bars = part.Bars.Select(Bar).ToValueList() }).ToValueList(),
            Riffs = song.Riffs.Select(riff => riff with { Content = riff.Content.Select(Bar).ToValueList() }).ToValueList(),
        };
        return numbered with { NoteCount = next };

        PartBar Bar(PartBar bar) => bar with { Strands = bar.Strands.Select(strand => strand with { Events = strand.Events.Select(Item).ToValueList() }).ToValueList() };

        Event Item(Event item) => item with { Graces = item.Graces.Select(Number).ToValueList(), Notes = item.Notes.Select(Number).ToValueList() };

        Note Number(Note note) => note with { Id = new NoteId(next++) };
    }
}
