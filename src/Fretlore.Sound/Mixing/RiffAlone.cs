using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Sound.Mixing;

/// <summary>A riff as a song of its own, as its part plays it: so that nothing of what stands around it is heard.</summary>
internal static class RiffAlone
{
    /// <summary>Makes it, at the tempo and with the feel of the riff's first place in the song.</summary>
    public static Song Of(Song song, Riff riff)
    {
        var use = song.RiffUses.FirstOrDefault(u => u.Riff == riff.Name);
        // One that stands nowhere in the song is played as it is defined, by the first part on such a neck.
        var part = use is not null ? song.Parts[use.Part] : song.Parts.FirstOrDefault(p => p.Neck == riff.Neck) ?? song.Parts[0];
        return song with
        {
            Bars = use is null ? riff.Bars : riff.Bars.Items.SetItem(0, Begun(riff.Bars[0], song, use.FirstBar)).ToValueList(),
            Parts = [part with { Neck = riff.Neck, Bars = riff.Content }],
            Sections = [],
            Riffs = [],
            RiffUses = [],
            Shapes = [],
            RoadMaps = [],
            RoadMapUses = [],
            Lesson = null,
            Recordings = [],
        };
    }

    private static Bar Begun(Bar first, Song song, int at)
    {
        var (tempo, feel) = InForce(song, at);
        return first with
        {
            Tempos = [new TempoMark(Beats.Zero, tempo), .. first.Tempos.Where(mark => mark.At > Beats.Zero)],
            FeelChange = feel,
        };
    }

    private static (Tempo Tempo, Feel? Feel) InForce(Song song, int bar)
    {
        var tempo = Tempo.Default;
        Feel? feel = null;
        for (var i = 0; i <= bar && i < song.Bars.Count; i++)
        {
            foreach (var mark in song.Bars[i].Tempos)
            {
                if (i < bar || mark.At == Beats.Zero) tempo = mark.Tempo;
            }
            feel = song.Bars[i].FeelChange ?? feel;
        }
        return (tempo, feel);
    }
}
