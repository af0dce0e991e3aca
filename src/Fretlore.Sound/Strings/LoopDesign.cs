using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Strings;

/// <summary>The filters in a string's loop for one note, and how long the delay line must be so that it is in tune.</summary>
/// <remarks>
/// One-pole loss filter fitted to the decay at the fundamental and at a high partial (Jaffe and Smith 1983; Välimäki and others 1996), two
/// equal first-order allpasses for stiffness. The delay line takes what is left of the period after the filters' own phase delay at the
/// frequency that must be right.
/// </remarks>
internal readonly struct LoopDesign
{
    private const double Rate = SampleRate.Hertz;
    private const double MostLoopGain = 0.99997;

    // Two allpasses follow the law within a cent or two up to the tenth partial of a guitar's lowest string, and fall behind from there on.
    private const int FittedPartial = 10;

    private LoopDesign(double pole, double gain, double allpass)
    {
        Pole = pole;
        Gain = gain;
        Allpass = allpass;
    }

    /// <summary>The loss filter is Gain (1 - Pole) / (1 - Pole z⁻¹).</summary>
    public double Pole { get; }

    public double Gain { get; }

    /// <summary>Each allpass is (Allpass + z⁻¹) / (1 + Allpass z⁻¹).</summary>
    public double Allpass { get; }

    /// <summary>Goes through it.</summary>
    public static void Visit(MemoryVisitor visitor, ref LoopDesign design)
    {
        var (pole, gain, allpass) = (design.Pole, design.Gain, design.Allpass);
        visitor.Exact(ref pole);
        visitor.Exact(ref gain);
        visitor.Exact(ref allpass);
        design = new LoopDesign(pole, gain, allpass);
    }

    /// <summary>Fits the filters.</summary>
    /// <param name="hertz">The fundamental of the stopped string.</param>
    /// <param name="lossAt">Nepers a second at a frequency.</param>
    /// <param name="stiffness">Inharmonicity B of the stopped string.</param>
    public static LoopDesign Of(double hertz, Func<double, double> lossAt, double stiffness)
    {
        var high = Math.Min(Math.Max(3000, 3 * hertz), Rate * 0.4);
        var (low, top) = (Math.Exp(-lossAt(hertz) / hertz), Math.Exp(-lossAt(high) / hertz));
        top = Math.Clamp(top, 1e-4, low * 0.999999);
        var pole = PoleOf(low, top, Angle(hertz), Angle(high));
        var gain = low / Magnitude(pole, Angle(hertz));
        return new LoopDesign(pole, Math.Min(gain, MostLoopGain), AllpassOf(hertz, stiffness, pole));
    }

    /// <summary>Samples the delay line must hold for the loop to sound at a frequency.</summary>
    /// <param name="hertz">The fundamental of the stopped string.</param>
    /// <param name="partial">The partial that is to be in tune; 1 but for harmonics.</param>
    public double DelayFor(double hertz, int partial = 1)
    {
        var angle = Angle(Math.Min(hertz * partial, Rate * 0.45));
        return Rate / hertz - LossDelay(Pole, angle) - 2 * AllpassDelay(Allpass, angle);
    }

    private static double Angle(double hertz) => 2 * Math.PI * hertz / Rate;

    private static double Magnitude(double pole, double angle) =>
        (1 - pole) / Math.Sqrt(1 - 2 * pole * Math.Cos(angle) + pole * pole);

    // |H(low)|² / |H(high)|² is the wanted ratio: a quadratic in the pole with one root inside the unit circle.
    private static double PoleOf(double low, double high, double lowAngle, double highAngle)
    {
        var ratio = low / high * (low / high);
        var middle = ratio * Math.Cos(lowAngle) - Math.Cos(highAngle);
        var last = ratio - 1;
        var root = middle * middle - last * last;
        return root <= 0 ? 0.98 : Math.Clamp((middle - Math.Sqrt(root)) / last, 0, 0.98);
    }

    private static double LossDelay(double pole, double angle) => Math.Atan2(pole * Math.Sin(angle), 1 - pole * Math.Cos(angle)) / angle;

    private static double AllpassDelay(double coefficient, double angle) =>
        1 - 2 * Math.Atan2(coefficient * Math.Sin(angle), 1 + coefficient * Math.Cos(angle)) / angle;

    // The coefficient that puts a high partial where stiffness puts it, as far as the loop is long enough.
    private static double AllpassOf(double hertz, double stiffness, double pole)
    {
        var period = Rate / hertz;
        var partial = Math.Clamp((int)(4000 / hertz), 2, FittedPartial);
        var stretch = Math.Sqrt((1 + stiffness * partial * partial) / (1 + stiffness));
        var (first, other) = (Angle(hertz), Angle(Math.Min(hertz * partial * stretch, Rate * 0.45)));
        // The loss filter does some of it.
        var wanted = period * (1 - 1 / stretch) - LossDelay(pole, first) + LossDelay(pole, other);
        var room = period * 0.45 / 2;
        var (none, most) = (0.0, -(room - 1) / (room + 1));
        for (var step = 0; step < 30; step++)
        {
            var middle = (none + most) / 2;
            if (2 * (AllpassDelay(middle, first) - AllpassDelay(middle, other)) < wanted) none = middle;
            else most = middle;
        }
        return Math.Min(none, 0);
    }
}
