using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>Where a riff stands in the song as it was written, so that it is heard with the band around it.</summary>
internal static class RiffPlace
{
    /// <summary>The first place where a part plays all of the riff note for note; null when none does, as when it is carried to another neck.</summary>
    internal static (int Part, int Bar)? Of(Song song, Riff riff)
    {
        foreach (var use in song.RiffUses)
        {
            if (use.Riff == riff.Name && IsAt(song, riff, use)) return (use.Part, use.FirstBar);
        }
        return null;
    }

    private static bool IsAt(Song song, Riff riff, RiffUse use)
    {
        var bars = song.Parts[use.Part].Bars;
        if (use.FirstBar + riff.Content.Count > bars.Count) return false;
        for (var bar = 0; bar < riff.Content.Count; bar++)
        {
            if (song.Bars[use.FirstBar + bar].Length != riff.Bars[bar].Length) return false;
            if (!Heights(riff.Content[bar]).SequenceEqual(Heights(bars[use.FirstBar + bar]))) return false;
        }
        return true;
    }

    private static IEnumerable<Height> Heights(PartBar bar) => bar.Notes.Select(n => n.Sounding);
}
