using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Mixing;

/// <summary>A song, or some of it, ready to be heard: both sides block by block, before loudness is set.</summary>
/// <remarks>Rendered once, from the start to the end. Parts are rendered side by side on all cores; the result does not depend on how many there are.</remarks>
public sealed class SongMix
{
    /// <summary>Samples a block.</summary>
    internal const int BlockLength = SoundPieces.Length / 50;

    private readonly ImmutableArray<ITrack> tracks;
    private readonly double[][] buffers;

    internal SongMix(ImmutableArray<ITrack> tracks)
    {
        this.tracks = tracks;
        buffers = [.. Enumerable.Range(0, tracks.Length * 2).Select(_ => new double[BlockLength])];
    }

    /// <summary>The song's title, with what of it is heard, its artist and rights.</summary>
    public required SongInfo Info { get; init; }

    /// <summary>For each track of the mix the index of the part that plays it; null for the click.</summary>
    public required ImmutableArray<int?> Parts { get; init; }

    /// <summary>Sections, in order of time.</summary>
    public required ImmutableArray<SoundMark> Marks { get; init; }

    /// <summary>Samples from the start to where the last note has died away; of a loop, one round.</summary>
    public required long Length { get; init; }

    /// <summary>All that its sound and what is said of it in a file depend on, to be compared by value.</summary>
    public object Content => (Info, Marks.ToValueList(), Length, RunUp, tracks.Select(track => track.Content).ToValueList());

    /// <summary>True when it is to be played round and round.</summary>
    public bool IsLoop => RunUp > 0;

    /// <summary>True where every track can begin at any piece, as strings can: no loop, no click.</summary>
    internal bool IsInPieces => !IsLoop && tracks.All(track => track is PartTrack);

    public double Seconds => Length / (double)SampleRate.Hertz;

    /// <summary>Samples that are rendered first and not kept; in a loop what rings over its seam gets going there.</summary>
    internal long RunUp { get; init; }

    /// <summary>Samples rendered past the end, where a loop is joined to its beginning.</summary>
    internal int Seam => IsLoop ? Stretch.Seam : 0;

    /// <summary>Samples that are passed on: the length and the seam.</summary>
    internal long Rendered => Length + Seam;

    /// <summary>What plays a track.</summary>
    internal ITrack Track(int track) => tracks[track];

    /// <summary>Renders everything.</summary>
    /// <param name="hear">Takes each block, left and right.</param>
    /// <param name="cores">How many parts may be rendered at once.</param>
    internal void Render(Action<ReadOnlyMemory<double>, ReadOnlyMemory<double>> hear, int cores = -1, CancellationToken cancel = default)
    {
        var (left, right) = (new double[BlockLength], new double[BlockLength]);
        var options = new ParallelOptions { MaxDegreeOfParallelism = cores };
        ForEachBlock(0, RunUp + Rendered, (start, length) =>
        {
            if (tracks.Length == 1) RenderTrack(0, start, length);
            else Parallel.For(0, tracks.Length, options, track => RenderTrack(track, start, length));
            Array.Clear(left);
            Array.Clear(right);
            for (var track = 0; track < tracks.Length; track++)
            {
                Add(buffers[2 * track], left, length);
                Add(buffers[2 * track + 1], right, length);
            }
            PassOn(left, right, start, length, hear);
        }, cancel);
    }

    /// <summary>Renders one track alone, from where it stands; several may be rendered at once.</summary>
    /// <param name="track">Index into <see cref="Parts"/>.</param>
    /// <param name="from">The first sample, the run-up counted.</param>
    /// <param name="count">How many.</param>
    /// <param name="hear">Takes each block, left and right.</param>
    internal void RenderAlone(int track, long from, long count, Action<ReadOnlyMemory<double>, ReadOnlyMemory<double>> hear, CancellationToken cancel = default) =>
        ForEachBlock(from, from + count, (start, length) =>
        {
            RenderTrack(track, start, length);
            PassOn(buffers[2 * track], buffers[2 * track + 1], start, length, hear);
        }, cancel);

    private static void ForEachBlock(long from, long end, Action<long, int> render, CancellationToken cancel)
    {
        for (; from < end; from += BlockLength)
        {
            cancel.ThrowIfCancellationRequested();
            render(from, (int)Math.Min(BlockLength, end - from));
        }
    }

    private void PassOn(double[] left, double[] right, long start, int length, Action<ReadOnlyMemory<double>, ReadOnlyMemory<double>> hear)
    {
        var skip = (int)Math.Clamp(RunUp - start, 0, length);
        if (skip < length) hear(left.AsMemory(skip, length - skip), right.AsMemory(skip, length - skip));
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
