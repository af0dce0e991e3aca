using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Picking;

/// <summary>Finds the strokes of the pick, or the fingers without one, for every plucked note of a song.</summary>
/// <remarks>
/// A part is played with the fingers where the sheet names picking fingers or gives it a bass voice of its own, and with a pick otherwise.
/// Strokes and fingers of the sheet are kept.
/// </remarks>
public static class PickingPlanner
{
    public static SongPicking Plan(Song song)
    {
        var notes = new NotePicking[song.NoteCount];
        var withFingers = song.Parts.Select(part => IsFingered(part.Bars)).ToList();
        for (var i = 0; i < song.Parts.Count; i++) Plan(song.Bars, song.Parts[i].Bars, withFingers[i], notes);
        foreach (var riff in song.Riffs)
        {
            var parts = song.RiffUses.Where(use => use.Riff == riff.Name).Select(use => use.Part).ToList();
            Plan(riff.Bars, riff.Content, IsFingered(riff.Content) || parts.Exists(part => withFingers[part]), notes);
        }
        return new SongPicking([.. notes], [.. withFingers]);
    }

    private static bool IsFingered(ValueList<PartBar> content) => content.SelectMany(bar => bar.Strands)
        .Any(strand => strand.Kind == StrandKind.Bass || strand.Events.Items.Any(item => item.PickingFinger is not null));

    private static void Plan(ValueList<Bar> bars, ValueList<PartBar> content, bool withFingers, NotePicking[] notes)
    {
        var moments = PluckedMoment.Read(bars, content);
        var fingers = withFingers ? FingerSearch.Find(moments) : [];
        var strokes = withFingers ? [] : PickSearch.Find(moments);
        for (var i = 0; i < moments.Count; i++)
        {
            for (var s = 0; s < moments[i].Strings.Length; s++)
            {
                notes[moments[i].Strings[s].Note.Id.Index] = !withFingers ? new NotePicking(strokes[i], null)
                    : fingers[i] is { } way ? new NotePicking(moments[i].Stated, way[s])
                    // More strings than fingers: the thumb strums them.
                    : new NotePicking(moments[i].Stated == Stroke.None ? Stroke.Down : moments[i].Stated, 'p');
            }
        }
    }
}
