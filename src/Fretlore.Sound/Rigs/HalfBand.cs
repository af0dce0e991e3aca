using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Fretlore.Sound.Pieces;
using Pair = System.Runtime.Intrinsics.Vector128<double>;
using Pairs = System.Runtime.Intrinsics.Vector256<double>;

namespace Fretlore.Sound.Rigs;

/// <summary>Doubles or halves the sample rate through two chains of allpasses: a half-band elliptic filter.</summary>
/// <remarks>
/// Valenzuela and Constantinides 1983; coefficients from the elliptic nome as given there. Both chains run beside each other, as the lower
/// and the upper half of a vector, which is also how their samples lie in the higher rate.
/// </remarks>
internal sealed class HalfBand
{
    private readonly Allpass[] up;
    private readonly Allpass[] down;

    /// <param name="length">Allpasses in each of the two chains.</param>
    /// <param name="transition">Width of the transition against the higher rate, below 0.5.</param>
    public HalfBand(int length, double transition)
    {
        var coefficients = Design(2 * length, transition);
        (up, down) = (new Allpass[length], new Allpass[length]);
        for (var i = 0; i < length; i++)
        {
            var (even, odd) = (Pair.One * coefficients[2 * i], Pair.One * coefficients[2 * i + 1]);
            // Going down, the later of two samples is the one that goes through the even ones.
            (up[i].Coefficient, down[i].Coefficient) = (Vector256.Create(even, odd), Vector256.Create(odd, even));
        }
    }

    /// <summary>Goes through what it remembers.</summary>
    public void Visit(MemoryVisitor visitor)
    {
        foreach (ref var allpass in up.AsSpan()) allpass.Visit(visitor);
        foreach (ref var allpass in down.AsSpan()) allpass.Visit(visitor);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Double(ReadOnlySpan<Pair> input, Span<Pair> output)
    {
        var pairs = MemoryMarshal.Cast<Pair, Pairs>(output);
        for (var i = 0; i < input.Length; i++) pairs[i] = Vector256.Create(input[i], input[i]);
        foreach (ref var allpass in up.AsSpan()) allpass.Run(pairs);
    }

    /// <summary>Halves the rate; the input is used up.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Halve(Span<Pair> input, Span<Pair> output)
    {
        var pairs = MemoryMarshal.Cast<Pair, Pairs>(input);
        foreach (ref var allpass in down.AsSpan()) allpass.Run(pairs);
        for (var i = 0; i < output.Length; i++) output[i] = (pairs[i].GetLower() + pairs[i].GetUpper()) * 0.5;
    }

    // One allpass of each chain: (c + z⁻¹) / (1 + c z⁻¹).
    private struct Allpass
    {
        public Pairs Coefficient;
        private Pairs before;
        private Pairs result;

        public void Visit(MemoryVisitor visitor)
        {
            visitor.Filter(ref before);
            visitor.Filter(ref result);
        }

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public void Run(Span<Pairs> block)
        {
            var (c, x, y) = (Coefficient, before, result);
            foreach (ref var value in block)
            {
                // In this order each result waits for one product and one difference only.
                y = value * c + x - y * c;
                x = value;
                value = y;
            }
            (before, result) = (Denormal.Settle(x), Denormal.Settle(y));
        }
    }

    private static double[] Design(int count, double transition)
    {
        var k = Math.Pow(Math.Tan((1 - transition * 2) * Math.PI / 4), 2);
        var root = Math.Pow(1 - k * k, 0.25);
        var e = 0.5 * (1 - root) / (1 + root);
        var e4 = e * e * e * e;
        var q = e * (1 + e4 * (2 + e4 * (15 + 150 * e4)));
        var order = 2 * count + 1;
        var made = new double[count];
        for (var index = 0; index < count; index++)
        {
            var c = index + 1;
            double above = 0, below = 0.5;
            for (var i = 0; i < 8; i++)
            {
                var sign = i % 2 == 0 ? 1 : -1;
                above += sign * Math.Pow(q, i * (i + 1)) * Math.Sin((2 * i + 1) * c * Math.PI / order);
                if (i > 0) below += sign * Math.Pow(q, i * i) * Math.Cos(2 * i * c * Math.PI / order);
            }
            var ratio = Math.Pow(above * Math.Pow(q, 0.25) / below, 2);
            var x = Math.Sqrt((1 - ratio * k) * (1 - ratio / k)) / (1 + ratio);
            made[index] = (1 - x) / (1 + x);
        }
        return made;
    }
}
