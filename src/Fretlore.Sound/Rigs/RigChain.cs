using Fretlore.Sound.Pieces;
using Pair = System.Runtime.Intrinsics.Vector128<double>;

namespace Fretlore.Sound.Rigs;

/// <summary>Two takes at once through a rig each: filters, drive, cabinet. A part recorded once leaves the second empty. Memory of the sound before is kept from block to block.</summary>
internal sealed class RigChain
{
    private readonly Biquad[] before;
    private readonly Drive? drive;
    private readonly Biquad[] after;

    public RigChain(Rig rig, int blockLength)
    {
        before = [.. rig.Before.Select(tone => Biquad.Of(tone, SampleRate.Hertz))];
        drive = rig.Drive is { } stages ? new Drive(stages, blockLength) : null;
        after = [.. rig.After.Select(tone => Biquad.Of(tone, SampleRate.Hertz))];
    }

    /// <summary>Goes through what it remembers.</summary>
    public void Visit(MemoryVisitor visitor)
    {
        foreach (var filter in before) filter.Visit(visitor);
        drive?.Visit(visitor);
        foreach (var filter in after) filter.Visit(visitor);
    }

    public void Run(Span<Pair> block)
    {
        foreach (var filter in before) filter.Run(block);
        drive?.Run(block);
        foreach (var filter in after) filter.Run(block);
    }
}
