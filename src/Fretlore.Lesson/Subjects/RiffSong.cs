using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Subjects;

/// <summary>A riff as a song of its own, at the tempo it is played at, to be timed, drawn or heard.</summary>
internal static class RiffSong
{
    public static Song Of(Song song, Riff riff, Tempo tempo)
    {
        var first = riff.Bars[0];
        var tempos = first.Tempos.Where(mark => !mark.At.IsZero).Prepend(new TempoMark(Beats.Zero, tempo)).ToValueList();
        return song with
        {
            Bars = riff.Bars.Items.SetItem(0, first with { Tempos = tempos }).ToValueList(),
            Parts = [new Part { Name = "riff", Title = riff.Name, Neck = riff.Neck, Bars = riff.Content }],
            Sections = [],
            Riffs = [],
            RiffUses = [],
            RoadMapUses = [],
            Lesson = null,
            Recordings = [],
        };
    }
}
