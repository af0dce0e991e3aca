using System.Numerics;

namespace Fretlore.Sound.Rigs;

/// <summary>One or two stages that bend the wave, run at a multiple of the sample rate so that the new partials don't fold back.</summary>
internal sealed class Drive
{
    private readonly HalfBand[] bands;
    private readonly double[][] buffers;
    private readonly DriveStages stages;
    private readonly Biquad? between;
    private readonly Biquad? betweenLow;

    public Drive(DriveStages stages, int blockLength)
    {
        this.stages = stages;
        bands = new HalfBand[stages.Doublings];
        buffers = new double[stages.Doublings][];
        for (var i = 0; i < bands.Length; i++)
        {
            // The first one guards the audible range; later ones have all the room between it and their own mirror.
            bands[i] = i == 0 ? new HalfBand(8, 0.04) : new HalfBand(4, 0.2);
            buffers[i] = new double[blockLength << (i + 1)];
        }
        var rate = SampleRate.Hertz * (double)(1 << stages.Doublings);
        if (stages.Second <= 0) return;
        between = Biquad.Of(Tone.LowPass(9000), rate);
        betweenLow = Biquad.Of(Tone.HighPass(90), rate);
    }

    public void Run(Span<double> block)
    {
        ReadOnlySpan<double> input = block;
        for (var i = 0; i < bands.Length; i++)
        {
            var output = buffers[i].AsSpan(0, input.Length * 2);
            bands[i].Double(input, output);
            input = output;
        }
        var top = bands.Length == 0 ? block : buffers[^1].AsSpan(0, input.Length);
        Bend(top, stages.First, stages.Lean);
        if (between is not null)
        {
            between.Run(top);
            betweenLow!.Run(top);
            Bend(top, stages.Second, 0);
        }
        for (var i = bands.Length - 1; i >= 0; i--)
        {
            var from = buffers[i].AsSpan(0, block.Length << (i + 1));
            bands[i].Halve(from, i == 0 ? block : buffers[i - 1].AsSpan(0, block.Length << i));
        }
    }

    // The hyperbolic tangent, around a point beside its middle when it leans, with nothing left where nothing goes in.
    private static void Bend(Span<double> block, double gain, double lean)
    {
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
