using System.Numerics;
using System.Runtime.InteropServices;
using Pair = System.Runtime.Intrinsics.Vector128<double>;

namespace Fretlore.Sound.Rigs;

/// <summary>One or two stages that bend the wave, run at a multiple of the sample rate so that the new partials don't fold back.</summary>
internal sealed class Drive
{
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
            bands[i] = i switch { 0 => new HalfBand(7, 0.06), 1 => new HalfBand(3, 0.25), _ => new HalfBand(2, 0.375) };
            buffers[i] = new Pair[blockLength << (i + 1)];
        }
        var rate = SampleRate.Hertz * (double)(1 << stages.Doublings);
        between = new OnePoles(9000, 90, rate);
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

    // The hyperbolic tangent, around a point beside its middle when it leans, with nothing left where nothing goes in.
    private static void Bend(Span<Pair> pairs, double gain, double lean)
    {
        var block = MemoryMarshal.Cast<Pair, double>(pairs);
        var rest = Math.Tanh(lean);
        var (two, one) = (new Vector<double>(2), Vector<double>.One);
        var (scale, shift, offset) = (new Vector<double>(gain), new Vector<double>(lean), new Vector<double>(rest));
        var (least, most) = (new Vector<double>(-15), new Vector<double>(15));
        var width = Vector<double>.Count;
        var i = 0;
        for (; i <= block.Length - width; i += width)
        {
            var x = Vector.Min(Vector.Max(new Vector<double>(block[i..]) * scale + shift, least), most);
            (one - two / (Vector.Exp(x * two) + one) - offset).CopyTo(block[i..]);
        }
        for (; i < block.Length; i++) block[i] = Math.Tanh(Math.Clamp(block[i] * gain + lean, -15, 15)) - rest;
    }

}
