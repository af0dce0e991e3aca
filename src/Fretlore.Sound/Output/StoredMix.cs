using System.Buffers;
using System.Runtime.CompilerServices;

namespace Fretlore.Sound.Output;

/// <summary>A mix whose tracks are kept apart, frame by frame beside each other, before they are set to a level. Several threads may read.</summary>
/// <param name="tracks">One or more.</param>
/// <param name="length">Frames of each.</param>
/// <param name="isLoop">True when its end goes over into its beginning.</param>
internal sealed class StoredMix(IReadOnlyList<FrameStore> tracks, long length, bool isLoop)
{
    public long Length => length;

    public bool IsLoop => isLoop;

    /// <summary>The same with one track alone.</summary>
    public StoredMix Only(int track) => new([tracks[track]], length, isLoop);

    /// <summary>Reads the sum of the tracks. Around a loop it goes on; around anything else it is silent.</summary>
    /// <param name="from">The first frame; it may be before the start.</param>
    /// <param name="sum">Takes left and right in turn; <see cref="FrameStore.BlockLength"/> frames at most.</param>
    /// <param name="highest">Takes for each frame the highest sample of a track alone; as long in frames as the sum, or empty.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Read(long from, Span<double> sum, Span<double> highest = default)
    {
        sum.Clear();
        highest.Clear();
        var rented = ArrayPool<float>.Shared.Rent(sum.Length);
        var frames = rented.AsSpan(0, sum.Length);
        foreach (var track in tracks)
        {
            ReadAround(track, from, frames);
            for (var i = 0; i < frames.Length; i++) sum[i] += frames[i];
            for (var i = 0; i < highest.Length; i++) highest[i] = Math.Max(highest[i], Math.Max(Math.Abs(frames[2 * i]), Math.Abs(frames[2 * i + 1])));
        }
        ArrayPool<float>.Shared.Return(rented);
    }

    private void ReadAround(FrameStore track, long from, Span<float> frames)
    {
        while (!frames.IsEmpty)
        {
            var at = isLoop ? (from % length + length) % length : from;
            var count = (int)Math.Min(frames.Length / 2, at < 0 ? -at : at < length ? length - at : long.MaxValue);
            if (at < 0 || at >= length) frames[..(2 * count)].Clear();
            else track.Read(at, frames[..(2 * count)]);
            frames = frames[(2 * count)..];
            from += count;
        }
    }
}
