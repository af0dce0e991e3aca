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

    public void Silence()
    {
        Array.Clear(line);
        lossState = firstIn = firstOut = secondOut = 0;
        fade = 0;
    }

    /// <summary>Sounds on, and adds what is heard to the output.</summary>
    /// <param name="push">What a pick or finger adds to the wave; as long as the output, or empty.</param>
    /// <param name="output">What the pickup hears is added to this.</param>
    /// <returns>The largest value in the line.</returns>
    public double Run(ReadOnlySpan<double> push, Span<double> output)
    {
        var (pole, allpass, wave) = (design.Pole, design.Allpass, line);
        var gain = design.Gain * (1 - pole) * Damping * Return;
        var pickup = (int)PickupDelay;
        var pickupShare = PickupDelay - pickup;
        var hearsBridge = PickupDelay <= 0;
        double largest = 0;
        for (var i = 0; i < output.Length; i++)
        {
            delay += step;
            var back = Read(wave, head, delay);
            if (fade > 0)
            {
                var old = fade-- / (double)FadeLength;
                back += old * (Read(wave, head, delayBefore) - back);
            }
            var first = allpass * (back - firstOut) + firstIn;
            var second = allpass * (first - secondOut) + firstOut;
            (firstIn, firstOut, secondOut) = (back, first, second);
            lossState = gain * second + pole * lossState;
            var value = lossState;
            if (i < push.Length) value += push[i];
            wave[head] = value;
            largest = Math.Max(largest, Math.Abs(value));
            if (!hearsBridge)
            {
                var later = wave[(head - pickup) & Mask];
                value -= later + pickupShare * (wave[(head - pickup - 1) & Mask] - later);
            }
            output[i] += value;
            head = (head + 1) & Mask;
        }
        return largest;
    }

    // Four samples around the place, weighted by Lagrange's polynomials.
    private static double Read(double[] wave, int head, double delay)
    {
        var whole = (int)delay;
        var d = delay - whole;
        var at = head - whole + Size;
        var (a, b, c, e) = (wave[(at + 1) & Mask], wave[at & Mask], wave[(at - 1) & Mask], wave[(at - 2) & Mask]);
        var (dm1, dm2, dp1) = (d - 1, d - 2, d + 1);
        return -d * dm1 * dm2 / 6 * a + dp1 * dm1 * dm2 / 2 * b - d * dp1 * dm2 / 2 * c + d * dp1 * dm1 / 6 * e;
    }
}
