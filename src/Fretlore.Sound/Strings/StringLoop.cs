using System.Runtime.CompilerServices;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Strings;

/// <summary>One vibrating string: a delay line that feeds back through its filters, heard at a pickup.</summary>
/// <remarks>
/// Karplus and Strong 1983 as extended by Jaffe and Smith 1983. The wave is of slope, so that an ideal pluck is a two-level wave. The line
/// is read between samples by third-order Lagrange interpolation (Laakso and others 1996), which may move while it sounds.
/// </remarks>
internal sealed class StringLoop
{
    private const int Size = 8192; // Holds a period of C-1, the lowest height there is.
    private const int Mask = Size - 1;
    private const int FadeLength = 96; // 2 ms: a finger lands.
    private const double ShortestDelay = 2.5;
    private const double LongestDelay = Size - 8;

    private readonly double[] line = new double[Size];
    private int head;
    private double lossState;
    private double firstIn;
    private double firstOut;
    private double secondOut;
    private double delay = 100;
    private double step;
    private double delayBefore;
    private int fade;

    private LoopDesign design;

    /// <summary>Extra loss each time round: 1 while it rings, less while a hand damps it.</summary>
    public double Damping { get; set; } = 1;

    /// <summary>Samples from the pickup to the bridge and back; 0 to hear the bridge itself.</summary>
    public double PickupDelay { get; set; }

    /// <summary>How much of the returning wave is let through: less than 1 while a pick or finger stops the old sound.</summary>
    public double Return { get; set; } = 1;

    public void Take(in LoopDesign newDesign) => design = newDesign;

    /// <summary>Changes the length at once, as a fret does.</summary>
    public void JumpTo(double samples, bool isRinging)
    {
        delayBefore = delay;
        fade = isRinging ? FadeLength : 0;
        delay = Math.Clamp(samples, ShortestDelay, LongestDelay);
        step = 0;
    }

    /// <summary>Changes the length evenly over so many samples, as a bend does.</summary>
    public void MoveTo(double samples, int over) => step = (Math.Clamp(samples, ShortestDelay, LongestDelay) - delay) / over;

    /// <summary>Goes through what it remembers.</summary>
    /// <param name="visitor">Takes it down, or puts it back.</param>
    /// <param name="isHeard">False for a string that lies still, which remembers nothing.</param>
    /// <param name="openPeriod">Samples of the open string's period.</param>
    public void Visit(MemoryVisitor visitor, bool isHeard, double openPeriod)
    {
        if (!isHeard)
        {
            Silence();
            (head, delay, step, delayBefore, Damping, Return) = (0, 100, 0, 0, 1, 1);
            return;
        }
        LoopDesign.Visit(visitor, ref design);
        var (damping, back) = (Damping, Return);
        visitor.Exact(ref damping);
        visitor.Exact(ref back);
        (Damping, Return) = (damping, back);
        visitor.Exact(ref delay);
        visitor.Exact(ref step);
        visitor.Exact(ref fade);
        if (fade == 0) delayBefore = 0;
        visitor.Exact(ref delayBefore);
        visitor.Filter(ref lossState);
        visitor.Filter(ref firstIn);
        visitor.Filter(ref firstOut);
        visitor.Filter(ref secondOut);
        // Two periods of the longest the string is now: a note that begins later and lower than the open string reads a little further.
        var kept = (int)Math.Min(Size, 2 * Math.Max(Math.Max(openPeriod, PickupDelay), Math.Max(delay, delayBefore)) + 8);
        Turn(kept);
        visitor.Wave(line.AsSpan(Size - kept));
    }

    // The newest so many samples to the line's end, nothing before them.
    private void Turn(int kept)
    {
        var whole = new double[Size];
        for (var i = 1; i <= kept; i++) whole[Size - i] = line[(head - i) & Mask];
        whole.CopyTo(line, 0);
        head = 0;
    }

    public void Silence()
    {
        Array.Clear(line);
        lossState = firstIn = firstOut = secondOut = 0;
        fade = 0;
    }

    /// <summary>Sounds on, and adds what is heard to the output.</summary>
    /// <param name="push">What a pick or finger adds to the wave; no longer than the output.</param>
    /// <param name="output">What the pickup hears is added to this.</param>
    /// <returns>The largest value in the line.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Run(ReadOnlySpan<double> push, Span<double> output)
    {
        var (pole, allpass, wave) = (design.Pole, design.Allpass, line);
        var gain = design.Gain * (1 - pole) * Damping * Return;
        var pickup = (int)PickupDelay;
        var pickupShare = PickupDelay - pickup;
        var heard = PickupDelay > 0 ? 1 : 0;
        var place = new Between(delay);
        var isMoving = step != 0 || fade > 0;
        var (at, loss, inOne, outOne, outTwo) = (head, lossState, firstIn, firstOut, secondOut);
        double largest = 0;
        for (var i = 0; i < output.Length; i++)
        {
            if (isMoving)
            {
                delay += step;
                place = new Between(delay);
            }
            var back = place.Read(wave, at);
            if (fade > 0)
            {
                var old = fade-- / (double)FadeLength;
                back += old * (new Between(delayBefore).Read(wave, at) - back);
            }
            var first = allpass * (back - outOne) + inOne;
            var second = allpass * (first - outTwo) + outOne;
            (inOne, outOne, outTwo) = (back, first, second);
            loss = gain * second + pole * loss;
            var value = loss;
            if (i < push.Length) value += push[i];
            wave[at & Mask] = value;
            largest = Math.Max(largest, Math.Abs(value));
            var later = wave[(at - pickup) & Mask];
            output[i] += value - heard * (later + pickupShare * (wave[(at - pickup - 1) & Mask] - later));
            at = (at + 1) & Mask;
        }
        (head, lossState, firstIn, firstOut, secondOut) = (at, loss, inOne, outOne, outTwo);
        return largest;
    }

    // A place between samples: four around it, weighted by Lagrange's polynomials.
    private readonly struct Between
    {
        private readonly int whole;
        private readonly double a;
        private readonly double b;
        private readonly double c;
        private readonly double e;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public Between(double delay)
        {
            whole = (int)delay;
            var d = delay - whole;
            var (dm1, dm2, dp1) = (d - 1, d - 2, d + 1);
            (a, b, c, e) = (-d * dm1 * dm2 * (1 / 6.0), dp1 * dm1 * dm2 * 0.5, -d * dp1 * dm2 * 0.5, d * dp1 * dm1 * (1 / 6.0));
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public double Read(double[] wave, int head)
        {
            var at = head - whole;
            return a * wave[(at + 1) & Mask] + b * wave[at & Mask] + c * wave[(at - 1) & Mask] + e * wave[(at - 2) & Mask];
        }
    }
}
