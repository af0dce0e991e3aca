using Pair = System.Runtime.Intrinsics.Vector128<double>;

namespace Fretlore.Sound.Rigs;

/// <summary>Doubles or halves the sample rate through two chains of allpasses: a half-band elliptic filter.</summary>
/// <remarks>Valenzuela and Constantinides 1983; coefficients from the elliptic nome as given there.</remarks>
internal sealed class HalfBand
{
    private readonly double[] coefficients;
    private readonly Pair[] up;
    private readonly Pair[] down;

    /// <param name="count">Allpasses in both chains together.</param>
    /// <param name="transition">Width of the transition against the higher rate, below 0.5.</param>
    public HalfBand(int count, double transition)
    {
        coefficients = Design(count, transition);
        (up, down) = (new Pair[2 * count], new Pair[2 * count]);
    }

    public void Double(ReadOnlySpan<Pair> input, Span<Pair> output)
    {
        for (var i = 0; i < input.Length; i++)
        {
            output[2 * i] = Chain(input[i], 0, up);
            output[2 * i + 1] = Chain(input[i], 1, up);
        }
        Settle(up);
    }

    public void Halve(ReadOnlySpan<Pair> input, Span<Pair> output)
    {
        for (var i = 0; i < output.Length; i++) output[i] = (Chain(input[2 * i + 1], 0, down) + Chain(input[2 * i], 1, down)) * 0.5;
        Settle(down);
    }

    private Pair Chain(Pair value, int first, Pair[] state)
    {
        for (var i = first; i < coefficients.Length; i += 2)
        {
            var result = (value - state[2 * i + 1]) * coefficients[i] + state[2 * i];
            state[2 * i] = value;
            state[2 * i + 1] = result;
            value = result;
        }
        return value;
    }

    private static void Settle(Pair[] state)
    {
        foreach (ref var value in state.AsSpan()) value = Denormal.Settle(value);
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
