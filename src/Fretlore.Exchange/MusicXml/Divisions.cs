using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Into how many equal divisions a quarter note is cut so that every time of a bar is a whole number.</summary>
/// <remarks>One number for the whole part where it stays within 16,383, the most the standard advises; otherwise one for each bar.</remarks>
internal static class Divisions
{
    private const long Most = 16_383;

    public static long[] Of(Song song, Part part)
    {
        var bars = part.Bars.Select((content, i) => OfBar(song.Bars[i], content)).ToArray();
        var whole = 1L;
        foreach (var bar in bars)
        {
            whole = Common(whole, bar);
            if (whole > Most) return bars;
        }
        Array.Fill(bars, whole);
        return bars;
    }

    private static long OfBar(Bar bar, PartBar content) => content.Strands
        .SelectMany(s => s.Events).SelectMany(e => new[] { e.Start, e.End })
        .Concat(bar.Tempos.Select(t => t.At))
        .Append(bar.Length)
        .Aggregate(1L, (all, time) => Common(all, time.Denominator));

    private static long Common(long a, long b)
    {
        var (x, y) = (a, b);
        while (y != 0) (x, y) = (y, x % y);
        return checked(a / x * b);
    }
}
