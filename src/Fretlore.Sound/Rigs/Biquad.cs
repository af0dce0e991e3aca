using System.Runtime.CompilerServices;
using Fretlore.Sound.Pieces;
using Pair = System.Runtime.Intrinsics.Vector128<double>;

namespace Fretlore.Sound.Rigs;

/// <summary>A second-order filter.</summary>
/// <remarks>Forms and names from Bristow-Johnson's Audio EQ Cookbook (W3C note, 2021); transposed direct form II.</remarks>
internal sealed class Biquad
{
    private readonly double b0;
    private readonly double b1;
    private readonly double b2;
    private readonly double a1;
    private readonly double a2;
    private Pair first;
    private Pair second;

    public Biquad(double b0, double b1, double b2, double a0, double a1, double a2) =>
        (this.b0, this.b1, this.b2, this.a1, this.a2) = (b0 / a0, b1 / a0, b2 / a0, a1 / a0, a2 / a0);

    public static Biquad Of(in Tone tone, double rate)
    {
        var w = 2 * Math.PI * Math.Min(tone.Hertz, rate * 0.45) / rate;
        var (cos, alpha) = (Math.Cos(w), Math.Sin(w) / (2 * tone.Q));
        var a = Math.Pow(10, tone.Decibels / 40);
        var root = 2 * Math.Sqrt(a) * alpha;
        return tone.Kind switch
        {
            ToneKind.HighPass => new Biquad((1 + cos) / 2, -(1 + cos), (1 + cos) / 2, 1 + alpha, -2 * cos, 1 - alpha),
            ToneKind.LowPass => new Biquad((1 - cos) / 2, 1 - cos, (1 - cos) / 2, 1 + alpha, -2 * cos, 1 - alpha),
            ToneKind.Peak => new Biquad(1 + alpha * a, -2 * cos, 1 - alpha * a, 1 + alpha / a, -2 * cos, 1 - alpha / a),
            ToneKind.LowShelf => new Biquad(
                a * (a + 1 - (a - 1) * cos + root), 2 * a * (a - 1 - (a + 1) * cos), a * (a + 1 - (a - 1) * cos - root),
                a + 1 + (a - 1) * cos + root, -2 * (a - 1 + (a + 1) * cos), a + 1 + (a - 1) * cos - root),
            _ => new Biquad(
                a * (a + 1 + (a - 1) * cos + root), -2 * a * (a - 1 + (a + 1) * cos), a * (a + 1 + (a - 1) * cos - root),
                a + 1 - (a - 1) * cos + root, 2 * (a - 1 - (a + 1) * cos), a + 1 - (a - 1) * cos - root),
        };
    }

    /// <summary>Goes through what it remembers.</summary>
    public void Visit(MemoryVisitor visitor)
    {
        visitor.Filter(ref first);
        visitor.Filter(ref second);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Run(Span<Pair> block)
    {
        var (one, two) = (first, second);
        foreach (ref var value in block)
        {
            var result = value * b0 + one;
            one = value * b1 + two - result * a1;
            two = value * b2 - result * a2;
            value = result;
        }
        (first, second) = (Denormal.Settle(one), Denormal.Settle(two));
    }
}
