using System.Collections.Immutable;
using Fretlore.Performance;
using Fretlore.Score;

namespace Fretlore.Sound.Mixing;

/// <summary>A named place in a sound, for players that jump to it.</summary>
/// <param name="Sample">From the sound's start.</param>
/// <param name="Name">A section's name.</param>
public readonly record struct SoundMark(long Sample, string Name)
{
    /// <summary>Where sections begin, each time the song comes to them from elsewhere; the place the sound begins in the middle of is marked too.</summary>
    internal static ImmutableArray<SoundMark> Of(PerformedSong song, Stretch stretch)
    {
        var marks = ImmutableArray.CreateBuilder<SoundMark>();
        Section? before = null;
        for (var i = stretch.First; i <= stretch.Last; i++)
        {
            var bar = song.Bars[i].Bar;
            var section = song.Song.Sections.LastOrDefault(s => bar >= s.FirstBar && bar < s.FirstBar + s.BarCount);
            if (section is not null && section != before)
            {
                marks.Add(new SoundMark(stretch.SampleAt(song.Bars[i].StartSeconds) - stretch.RunUp, section.Name));
            }
            before = section;
        }
        return marks.ToImmutable();
    }
}
