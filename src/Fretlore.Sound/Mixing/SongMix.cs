using System.Collections.Immutable;
using Fretlore.Score;

namespace Fretlore.Sound.Mixing;

/// <summary>A song, or some of it, ready to be heard: both sides block by block, before loudness is set.</summary>
/// <remarks>Rendered once, from the start to the end. Parts are rendered side by side on all cores; the result does not depend on how many there are.</remarks>
public sealed class SongMix
{
    /// <summary>Samples a block.</summary>
    internal const int BlockLength = 8192;

    private readonly ImmutableArray<ITrack> tracks;
    private readonly double[][] buffers;

    internal SongMix(SongInfo info, ImmutableArray<ITrack> tracks, ImmutableArray<int?> parts, long length)
    {
        Info = info;
        this.tracks = tracks;
        Parts = parts;
        Length = length;
        buffers = [.. Enumerable.Range(0, tracks.Length * 2).Select(_ => new double[BlockLength])];
    }

    /// <summary>The song's title, artist and rights.</summary>
    public SongInfo Info { get; }

    /// <summary>For each track of the mix the index of the part that plays it; null for the click.</summary>
    public ImmutableArray<int?> Parts { get; }

    /// <summary>Samples from the start to where the last note has died away.</summary>
    public long Length { get; }

    public double Seconds => Length / (double)SampleRate.Hertz;

    /// <summary>Renders everything.</summary>
    /// <param name="hear">Takes each block, left and right.</param>
    /// <param name="cores">How many parts may be rendered at once.</param>
    internal void Render(Action<ReadOnlyMemory<double>, ReadOnlyMemory<double>> hear, int cores = -1, CancellationToken cancel = default)
    {
        var (left, right) = (new double[BlockLength], new double[BlockLength]);
        var options = new ParallelOptions { MaxDegreeOfParallelism = cores };
        for (long from = 0; from < Length; from += BlockLength)
        {
            cancel.ThrowIfCancellationRequested();
            var (start, length) = (from, (int)Math.Min(BlockLength, Length - from));
            if (tracks.Length == 1) RenderTrack(0, start, length);
            else Parallel.For(0, tracks.Length, options, track => RenderTrack(track, start, length));
            Array.Clear(left);
            Array.Clear(right);
            for (var track = 0; track < tracks.Length; track++)
            {
                Add(buffers[2 * track], left, length);
                Add(buffers[2 * track + 1], right, length);
            }
            hear(left.AsMemory(0, length), right.AsMemory(0, length));
        }
    }

    /// <summary>Renders one track alone, from its start to the end of the mix; several may be rendered at once.</summary>
    /// <param name="track">Index into <see cref="Parts"/>.</param>
    /// <param name="hear">Takes each block, left and right.</param>
    internal void RenderAlone(int track, Action<ReadOnlyMemory<double>, ReadOnlyMemory<double>> hear, CancellationToken cancel = default)
    {
        for (long from = 0; from < Length; from += BlockLength)
        {
            cancel.ThrowIfCancellationRequested();
            var length = (int)Math.Min(BlockLength, Length - from);
            RenderTrack(track, from, length);
            hear(buffers[2 * track].AsMemory(0, length), buffers[2 * track + 1].AsMemory(0, length));
        }
    }

    private void RenderTrack(int track, long from, int length)
    {
        var left = buffers[2 * track].AsSpan(0, length);
        var right = buffers[2 * track + 1].AsSpan(0, length);
        left.Clear();
        right.Clear();
        tracks[track].Render(from, left, right);
    }

    private static void Add(double[] from, double[] to, int length)
    {
        for (var i = 0; i < length; i++) to[i] += from[i];
    }
}
