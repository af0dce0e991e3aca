using Pair = System.Runtime.Intrinsics.Vector128<double>;
using Pairs = System.Runtime.Intrinsics.Vector256<double>;
using Vector128 = System.Runtime.Intrinsics.Vector128;
using Vector256 = System.Runtime.Intrinsics.Vector256;

namespace Fretlore.Sound.Rigs;

/// <summary>Keeps filter memories out of the range where processors are slow.</summary>
internal static class Denormal
{
    private const double Floor = 1e-30; // 600 dB down.

    public static Pair Settle(Pair value) =>
        Vector128.ConditionalSelect(Vector128.LessThan(Vector128.Abs(value), Vector128.Create(Floor)), Pair.Zero, value);

    public static Pairs Settle(Pairs value) =>
        Vector256.ConditionalSelect(Vector256.LessThan(Vector256.Abs(value), Vector256.Create(Floor)), Pairs.Zero, value);

    public static double Settle(double value) => Math.Abs(value) < Floor ? 0 : value;
}
