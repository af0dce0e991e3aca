using Fretlore.Performance;
using Fretlore.Score;

namespace Fretlore.Sound.Mixing;

/// <summary>Finds the bars a request asks for: by number, by section, or by the riff that stands in them.</summary>
internal static class StretchFinder
{
    /// <returns>The bars, or why there are none.</returns>
    public static (Stretch? Found, SoundResult? Refusal) Find(PerformedSong performed, SoundRequest request)
    {
        var song = performed.Song;
        if (request.Section is { } sectionName)
        {
            var section = song.Sections.FirstOrDefault(s => s.Name.Equals(sectionName.Trim(), StringComparison.OrdinalIgnoreCase));
            return section is null ? (null, SoundRefusals.Section(song, sectionName)) : Within(performed, section.Name, section.FirstBar, section.BarCount, request);
        }
        if (request.Riff is { } riffName)
        {
            if (RiffOf(song, riffName) is not { } riff) return (null, SoundRefusals.Riff(song, riffName));
            var use = song.RiffUses.FirstOrDefault(u => u.Riff == riff.Name);
            return use is null ? (null, SoundRefusals.RiffNotInSong(riff.Name)) : Within(performed, riff.Name, use.FirstBar, use.BarCount, request);
        }
        var bars = Stretch.OfNumbers(performed, request.FromBar, request.ToBar);
        return (bars, bars is null ? SoundRefusals.Bars(song, request) : null);
    }

    /// <summary>The riff with this name that has music; null when there is none.</summary>
    public static Riff? RiffOf(Song song, string name) =>
        song.Riffs.FirstOrDefault(r => r.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase) && r.Bars.Count > 0);

    // Its bars are counted from 1, a pickup too.
    private static (Stretch? Found, SoundResult? Refusal) Within(PerformedSong performed, string name, int firstBar, int barCount, SoundRequest request)
    {
        var (from, to) = (request.FromBar ?? 1, request.ToBar ?? barCount);
        if (from < 1 || to < from || to > barCount) return (null, SoundRefusals.BarsWithin(name, barCount, from, to));
        var found = Stretch.OfWritten(performed, firstBar + from - 1, to - from + 1);
        return (found, found is null ? SoundRefusals.NeverPlayed(name) : null);
    }
}
