using Fretlore.Listening.Spectra;
using Fretlore.Listening.Takes;
using Fretlore.Performance;

namespace Fretlore.Listening.Alignment;

/// <summary>Finds when each bar of a song begins in a take.</summary>
/// <remarks>
/// Harmony and onsets are lined up roughly first, five moments a second, then finely at the tempo found; in the end each bar goes to the attacks that are
/// heard around it. The same take and sheet give the same times.
/// </remarks>
public static class TakeAligner
{
    private const int Coarse = 10; // Moments that are taken together at first.
    private const double Band = 1.5; // Seconds that the fine way may be off the rough tempo.
    private const double Early = 0.05; // Seconds: a take that was cut right at its first attack has its first bar.
    private const double LineReach = 12; // Moments around one whose way is taken together.

    /// <param name="song">The performance, as written.</param>
    /// <param name="parts">Indexes of the parts that are heard in the take; not empty.</param>
    /// <param name="take">The take.</param>
    /// <param name="cancel">Ends the work early.</param>
    /// <returns>Null where none of the song can be in the take.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static AlignedTake? Align(PerformedSong song, IReadOnlyCollection<int> parts, Take take, CancellationToken cancel = default)
    {
        var cents = HeardMusic.TuningOf(take);
        var heard = HeardMusic.Of(take, cents, cancel);
        if (Roughly(song, parts, heard, cancel) is not { } rough) return null;
        // From here on the sheet is played as fast as the take, and only what differs from that is looked for.
        var written = WrittenMusic.Of(song, parts, rough.TimeOf, Math.Min(rough.TimeOf(song.Seconds), take.Seconds));
        if (Finely(written, heard, cancel) is not { } way) return null;
        var attacks = AttackTimes.Of(
            song, parts, seconds => RoughTempo.LineThrough(way, rough.TimeOf(seconds) * MusicFrames.Rate, LineReach) / MusicFrames.Rate, new Attacks(take, cancel));
        var bars = song.Bars.Select((bar, index) =>
        {
            var end = index + 1 < song.Bars.Length ? song.Bars[index + 1].StartSeconds : song.Seconds;
            var at = attacks.TimeOf(bar.StartSeconds);
            return at >= -Early && at < take.Seconds ? new HeardBar(index, Math.Max(0, at), UnlikeIn(bar.StartSeconds, end)) : new HeardBar(index, null, 0);
        });
        return new AlignedTake([.. bars], UnlikeIn(0, song.Seconds), cents);

        double UnlikeIn(double from, double to)
        {
            var (first, last) = (MomentOf(from), Math.Max(MomentOf(from), MomentOf(to)));
            var sum = 0.0;
            for (var i = first; i <= last; i++) sum += i < 0 || i >= written.Count ? Warping.Missing : written.Distance(i, heard, way[i]);
            return sum / (last - first + 1);
        }

        int MomentOf(double seconds) => (int)Math.Floor(rough.TimeOf(seconds) * MusicFrames.Rate);
    }

    private static RoughTempo? Roughly(PerformedSong song, IReadOnlyCollection<int> parts, MusicFrames heard, CancellationToken cancel)
    {
        var (written, take) = (WrittenMusic.Of(song, parts, seconds => seconds, song.Seconds).Coarser(Coarse), heard.Coarser(Coarse));
        var way = Warping.Find(written, take, new int[written.Count], take.Count, isWhole: false, cancel);
        return way is null ? null : RoughTempo.Of(way, MusicFrames.Rate / (double)Coarse);
    }

    private static int[]? Finely(MusicFrames written, MusicFrames heard, CancellationToken cancel)
    {
        var half = (int)(Band * MusicFrames.Rate);
        return Warping.Find(written, heard, [.. Enumerable.Range(0, written.Count).Select(moment => Math.Max(0, moment - half))], 2 * half, isWhole: true, cancel);
    }
}
