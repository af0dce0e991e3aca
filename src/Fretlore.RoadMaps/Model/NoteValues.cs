using Fretlore.Music;

namespace Fretlore.RoadMaps.Model;

/// <summary>Written values by their length.</summary>
internal static class NoteValues
{
    /// <summary>Longest first: plain and with one dot.</summary>
    private static readonly NoteValue[] All =
    [
        .. Enum.GetValues<ValueBase>().SelectMany(v => new[] { new NoteValue(v, 1), new NoteValue(v) }).OrderByDescending(v => v.Length),
    ];

    /// <summary>The value that lasts so long; null when none does.</summary>
    public static NoteValue? Of(Beats length)
    {
        foreach (var value in All)
        {
            if (value.Length == length) return value;
        }
        return null;
    }

    /// <summary>Values that fill a stretch of a bar, to be tied, cut at beats where they don't fit whole.</summary>
    /// <param name="from">Where it begins in the bar.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="beats">Where the bar's beats begin.</param>
    public static IEnumerable<(Beats At, NoteValue Value)> Fill(Beats from, Beats to, ValueList<Beats> beats)
    {
        while (from < to)
        {
            var length = to - from;
            if (Of(length) is not { } value)
            {
                // Up to the next beat if one lies between, else the longest value that fits.
                var next = beats.Items.FirstOrDefault(b => b > from, to);
                if (next < to && Of(next - from) is { } upToBeat) value = upToBeat;
                else value = Array.Find(All, v => v.Length <= length);
            }
            if (value.Length.IsZero) yield break;
            yield return (from, value);
            from += value.Length;
        }
    }
}
