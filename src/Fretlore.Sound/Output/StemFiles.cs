using Fretlore.Sound.Mixing;

namespace Fretlore.Sound.Output;

/// <summary>Writes a mix and each of its parts alone, all from one rendering.</summary>
/// <remarks>
/// Every stem is as long as the mix, begins with it and is as loud as in it, sample by sample: together they are the mix again, less what
/// a codec changes. Tracks are rendered side by side, and files written side by side, on all cores; the bytes don't depend on how many.
/// </remarks>
public static class StemFiles
{
    /// <summary>Bits a second of a stem in Opus: four minutes of two parts are under 4 MB.</summary>
    public const int StemBitsASecond = 64_000;

    /// <summary>Renders and writes.</summary>
    /// <param name="mix">The mix; rendered once.</param>
    /// <param name="room">Gives empty streams that can be written, read and sought, to work in; disposed of here.</param>
    /// <param name="full">Takes the whole mix; an empty stream, left open.</param>
    /// <param name="stems">Takes each of <see cref="SongMix.Parts"/> alone, in their order; none to leave the stems out.</param>
    /// <param name="format">The kind of all files.</param>
    /// <param name="progress">Told the share that is done, 0 to 1; from several threads, one at a time.</param>
    /// <param name="pieces">Takes the parts once more in mono pieces; null to leave them out.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="IOException">A stream can't be written.</exception>
    public static WrittenSound Write(
        SongMix mix, Func<Stream> room, Stream full, IReadOnlyList<Stream> stems, SoundFormat format, Action<double>? progress = null,
        StemPieces? pieces = null, CancellationToken cancel = default)
    {
        var rooms = new List<Stream>();
        try
        {
            while (rooms.Count < mix.Parts.Length + 1) rooms.Add(room());
            var stores = rooms.Select(stream => new FrameStore(stream)).ToArray();
            var tracks = stores[..^1];
            var done = new SharedProgress(progress);
            SideBySide.Run(tracks.Length, track => Render(mix, track, tracks[track], done, cancel), cancel);
            var stored = new StoredMix(tracks, mix.IsLoop, cancel);
            var level = Level.Find(stored, stored.Measure(), format);
            stored.Apply(level);
            done.Is(0.75);
            // The sum gets a room of its own, so that it can be read beside its tracks.
            stored.Sum(stores[^1]);
            pieces?.Begin(tracks.Length);
            var share = 0.25 / (1 + stems.Count);
            SideBySide.Run(1 + stems.Count, file =>
            {
                var (store, output) = file == 0 ? (stores[^1], full) : (tracks[file - 1], stems[file - 1]);
                SoundFile.Encode(new StoredMix([store], mix.IsLoop, cancel), mix, output, format, file == 0 ? null : StemBitsASecond);
                done.Add(share);
            }, cancel);
            if (pieces is not null) SideBySide.Run(tracks.Length, track => pieces.Write(track, tracks[track], mix.Length, cancel), cancel);
            return new WrittenSound(mix.Seconds, level.Loudness, level.Gain);
        }
        finally
        {
            rooms.ForEach(stream => stream.Dispose());
        }
    }

    private static void Render(SongMix mix, int track, FrameStore store, SharedProgress done, CancellationToken cancel)
    {
        var share = 0.6 / mix.Rendered / mix.Parts.Length;
        mix.RenderAlone(track, (left, right) =>
        {
            store.Write(left.Span, right.Span);
            done.Add(share * left.Length);
        }, cancel);
        if (mix.IsLoop) store.CloseLoop(mix.Length, mix.Seam);
    }

    private sealed class SharedProgress(Action<double>? tell)
    {
        private readonly Lock gate = new();
        private double share;

        public void Add(double more)
        {
            lock (gate) Is(share + more);
        }

        public void Is(double now)
        {
            lock (gate)
            {
                share = Math.Min(now, 1);
                tell?.Invoke(share);
            }
        }
    }
}
