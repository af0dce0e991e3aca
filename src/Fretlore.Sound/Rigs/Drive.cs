using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Fretlore.Sound.Pieces;
using Pair = System.Runtime.Intrinsics.Vector128<double>;

namespace Fretlore.Sound.Rigs;

/// <summary>One or two stages that bend the wave, run at a multiple of the sample rate so that the new partials don't fold back.</summary>
internal sealed class Drive
{
    private const double Reaches1 = 4.971786858527936;

    private readonly HalfBand[] bands;
    private readonly Pair[][] buffers;
    private readonly DriveStages stages;
    private readonly OnePoles between;

    public Drive(DriveStages stages, int blockLength)
    {
        this.stages = stages;
        bands = new HalfBand[stages.Doublings];
        buffers = new Pair[stages.Doublings][];
        for (var i = 0; i < bands.Length; i++)
        {
            // The first one guards the audible range; later ones have all the room between it and its mirror.
            bands[i] = i switch { 0 => new HalfBand(4, 0.06), 1 => new HalfBand(2, 0.25), _ => new HalfBand(1, 0.375) };
            buffers[i] = new Pair[blockLength << (i + 1)];
        }
        var rate = SampleRate.Hertz * (double)(1 << stages.Doublings);
        between = new OnePoles(9000, 90, rate);
    }

    /// <summary>Goes through what it remembers.</summary>
    public void Visit(MemoryVisitor visitor)
    {
        foreach (var band in bands) band.Visit(visitor);
        between.Visit(visitor);
    }

    public void Run(Span<Pair> block)
    {
        ReadOnlySpan<Pair> input = block;
        for (var i = 0; i < bands.Length; i++)
        {
            var output = buffers[i].AsSpan(0, input.Length * 2);
            bands[i].Double(input, output);
            input = output;
        }
        var top = bands.Length == 0 ? block : buffers[^1].AsSpan(0, input.Length);
        Bend(top, stages.First, stages.Lean);
        if (stages.Second > 0)
        {
            between.Run(top);
            Bend(top, stages.Second, 0);
        }
        for (var i = bands.Length - 1; i >= 0; i--)
        {
            var from = buffers[i].AsSpan(0, block.Length << (i + 1));
            bands[i].Halve(from, i == 0 ? block : buffers[i - 1].AsSpan(0, block.Length << i));
        }
    }

    // A hyperbolic tangent around a point beside its middle when it leans, with nothing left where nothing goes in.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Bend(Span<Pair> pairs, double gain, double lean)
    {
        var block = MemoryMarshal.Cast<Pair, double>(pairs);
        var rest = Tangent(Vector.Create(lean));
        var width = Vector<double>.Count;
        var i = 0;
        for (; i <= block.Length - width; i += width) (Tangent(new Vector<double>(block[i..]) * gain + Vector.Create(lean)) - rest).CopyTo(block[i..]);
        for (; i < block.Length; i++) block[i] = (Tangent(Vector.Create(block[i] * gain + lean)) - rest)[0];
    }

    // Its continued fraction (Lambert 1761) as far as x⁷, cut off where that reaches 1: within 0.0001 everywhere, and nothing but sums,
    // products and a quotient, which are the same on every machine.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Tangent(Vector<double> x)
    {
        x = Vector.Min(Vector.Max(x, Vector.Create(-Reaches1)), Vector.Create(Reaches1));
        var square = x * x;
        var above = ((square + Vector.Create(378.0)) * square + Vector.Create(17_325.0)) * square + Vector.Create(135_135.0);
        var below = ((square * 28 + Vector.Create(3_150.0)) * square + Vector.Create(62_370.0)) * square + Vector.Create(135_135.0);
        return x * above / below;
    }
}
