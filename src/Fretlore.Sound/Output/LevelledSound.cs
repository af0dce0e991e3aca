using System.Runtime.CompilerServices;

namespace Fretlore.Sound.Output;

/// <summary>A mix, or one track of it, at its level within the mix: what the limiter does to the sum at a moment it does to all tracks, so that they still add up to it.</summary>
/// <param name="mix">Before it is set to a level.</param>
/// <param name="curve">For each frame the factor it is turned up by.</param>
/// <param name="cancel">Ends the playing early.</param>
internal sealed class LevelledSound(StoredMix mix, FrameStore curve, CancellationToken cancel)
{
    public long Length => mix.Length;

    /// <summary>One track alone.</summary>
    public LevelledSound Only(int track) => new(mix.Only(track), curve, cancel);

    /// <summary>Passes every frame on.</summary>
    public void Play(Action<double, double> hear) => Play(0, mix.Length, hear);

    /// <summary>Passes frames on, as far as there are any.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Play(long from, long count, Action<double, double> hear)
    {
        var (sum, factors) = (new double[2 * FrameStore.BlockLength], new float[FrameStore.BlockLength]);
        var end = Math.Min(from + count, mix.Length);
        for (var at = Math.Max(from, 0); at < end; at += FrameStore.BlockLength)
        {
            cancel.ThrowIfCancellationRequested();
            var length = (int)Math.Min(FrameStore.BlockLength, end - at);
            mix.Read(at, sum.AsSpan(0, 2 * length));
            curve.Read(at, factors.AsSpan(0, length));
            for (var i = 0; i < length; i++) hear(sum[2 * i] * factors[i], sum[2 * i + 1] * factors[i]);
        }
    }
}
