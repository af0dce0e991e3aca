using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.Subjects;

/// <summary>Cuts bars out of a riff or part and makes a riff of them. Repeats are left out: each written bar is there once.</summary>
internal static class Passage
{
    /// <summary>True when nothing is played in a riff.</summary>
    public static bool IsSilent(this Riff riff) => !riff.Content.Any(bar => bar.Notes.Any());

    /// <param name="riff">The riff to cut from.</param>
    /// <param name="range">Its bars, by their numbers; there must be such bars.</param>
    /// <param name="name">What to call it.</param>
    public static Riff Of(Riff riff, BarRange range, string name)
    {
        var (first, count) = Indexes(riff, range);
        return Of(riff, first, count, name);
    }

    /// <summary>Where numbered bars stand in a riff.</summary>
    public static (int First, int Count) Indexes(Riff riff, BarRange range)
    {
        int[] within = [.. Enumerable.Range(0, riff.Bars.Count).Where(i => riff.Bars[i].Number >= range.First && riff.Bars[i].Number <= range.Last)];
        return (within[0], within[^1] - within[0] + 1);
    }

    /// <param name="riff">The riff to cut from.</param>
    /// <param name="first">Index of the first bar.</param>
    /// <param name="count">How many bars.</param>
    /// <param name="name">What to call it.</param>
    public static Riff Of(Riff riff, int first, int count, string name) => new()
    {
        Name = name,
        Neck = riff.Neck,
        Bars = Bars(riff.Bars, first, count),
        Content = CutBars.Of(riff.Content.Items.Slice(first, count)),
    };

    /// <inheritdoc cref="Of(Riff, int, int, string)"/>
    public static Riff Of(Song song, Place place, string name)
    {
        var part = song.Parts[place.Part];
        return new Riff
        {
            Name = name,
            Neck = part.Bars[place.FirstBar].Neck,
            Bars = Bars(song.Bars, place.FirstBar, place.BarCount),
            Content = CutBars.Of(part.Bars.Items.Slice(place.FirstBar, place.BarCount)),
        };
    }

    private static ValueList<Bar> Bars(ValueList<Bar> bars, int first, int count)
    {
        var pickup = bars[first].IsPickup ? 0 : 1;
        return bars.Items.Slice(first, count).Select((bar, i) => bar with
        {
            Number = i + pickup,
            StartsRepeat = false,
            RepeatCount = 0,
            EndingPasses = [],
            StartsEnding = false,
            EndsEnding = false,
            EndLine = i + 1 == count ? BarLine.Final : bar.EndLine,
        }).ToValueList();
    }
}
