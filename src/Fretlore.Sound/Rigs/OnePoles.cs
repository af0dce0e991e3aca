using System.Runtime.CompilerServices;
using Fretlore.Sound.Pieces;
using Pair = System.Runtime.Intrinsics.Vector128<double>;

namespace Fretlore.Sound.Rigs;

/// <summary>A gentle band between two corners, as the capacitors between two stages make it.</summary>
internal sealed class OnePoles(double highHertz, double lowHertz, double rate)
{
    private readonly double highShare = 1 - Math.Exp(-2 * Math.PI * highHertz / rate);
    private readonly double lowShare = 1 - Math.Exp(-2 * Math.PI * lowHertz / rate);
    private Pair high;
    private Pair low;

    /// <summary>Goes through what it remembers.</summary>
    public void Visit(MemoryVisitor visitor)
    {
        visitor.Filter(ref high);
        visitor.Filter(ref low);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Run(Span<Pair> block)
    {
        var (h, l) = (high, low);
        foreach (ref var value in block)
        {
            h = value * highShare + h * (1 - highShare);
            l = h * lowShare + l * (1 - lowShare);
            value = h - l;
        }
        (high, low) = (Denormal.Settle(h), Denormal.Settle(l));
    }
}
