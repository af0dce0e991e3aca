using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Picking;

/// <summary>How the picking hand plays one note.</summary>
/// <param name="Stroke">Its stroke, for a pick.</param>
/// <param name="Finger">Its finger (p, i, m, a, c), without one; null for a pick and for what is not plucked.</param>
public readonly record struct NotePicking(Stroke Stroke, char? Finger);

/// <summary>What the picking hand does in a song.</summary>
/// <param name="Notes">For each note id how it is played; nothing for what is hammered, pulled, glided, tapped or held.</param>
/// <param name="WithFingers">For each part whether it is played with the fingers, without a pick.</param>
public sealed record SongPicking(ImmutableArray<NotePicking> Notes, ImmutableArray<bool> WithFingers)
{
    public NotePicking Of(NoteId note) => Notes[note.Index];

    /// <summary>The song with all strokes written in, and the finger of every note that sounds alone, for pages that show them.</summary>
    public Song WrittenInto(Song song) => song with
    {
        Parts = song.Parts.Select(part => part with { Bars = Written(part.Bars) }).ToValueList(),
        Riffs = song.Riffs.Select(riff => riff with { Content = Written(riff.Content) }).ToValueList(),
    };

    private ValueList<PartBar> Written(ValueList<PartBar> bars) => bars.Select(bar => bar with
    {
        Strands = bar.Strands.Select(strand => strand with { Events = strand.Events.Select(Written).ToValueList() }).ToValueList(),
    }).ToValueList();

    private Event Written(Event item)
    {
        if (item.Notes.Count == 0) return item;
        var picked = item.Notes.Items.Select(n => Of(n.Id)).ToList();
        var stroke = picked.Select(p => p.Stroke).FirstOrDefault(s => s != Stroke.None);
        return item with
        {
            Stroke = item.Stroke == Stroke.None ? stroke : item.Stroke,
            PickingFinger = item.PickingFinger ?? (picked.Count == 1 ? picked[0].Finger : null),
        };
    }
}
