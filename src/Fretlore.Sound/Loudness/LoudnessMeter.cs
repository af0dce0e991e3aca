using System.Runtime.CompilerServices;

namespace Fretlore.Sound.Loudness;

/// <summary>Integrated loudness of a stereo programme in LUFS.</summary>
/// <remarks>ITU-R BS.1770-4: K-weighting (its coefficients for 48 kHz), blocks of 400 ms that overlap by three quarters, gates at -70 LUFS and 10 LU below the rest.</remarks>
internal sealed class LoudnessMeter
{
    /// <summary>Samples of a step.</summary>
    public const int StepLength = SampleRate.Hertz / 10;
    private const double Offset = -0.691;

    private readonly Weighting left = new();
    private readonly Weighting right = new();
    private readonly List<double> steps = [];
    private double energy;
    private int filled;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Hear(double leftValue, double rightValue)
    {
        var (l, r) = (left.Weigh(leftValue), right.Weigh(rightValue));
        energy += l * l + r * r;
        if (++filled < StepLength) return;
        steps.Add(energy / StepLength);
        (energy, filled) = (0, 0);
    }

    /// <summary>Mean energy of each 100 ms that were heard.</summary>
    public IReadOnlyList<double> Steps => steps;

    /// <summary>LUFS of all that was heard; null for silence.</summary>
    public double? Integrated() => Integrated(steps);

    /// <summary>LUFS of what has these <see cref="Steps"/>; null for silence.</summary>
    public static double? Integrated(IReadOnlyList<double> steps)
    {
        var blocks = new List<double>();
        for (var i = 3; i < steps.Count; i++) blocks.Add((steps[i] + steps[i - 1] + steps[i - 2] + steps[i - 3]) / 4);
        // Shorter than one block: what there is, as if it went on.
        if (blocks.Count == 0 && steps.Count > 0) blocks.Add(steps.Average());
        var heard = blocks.Where(block => Lufs(block) > -70).ToList();
        if (heard.Count == 0) return null;
        var gate = Lufs(heard.Average()) - 10;
        return Lufs(heard.Where(block => Lufs(block) > gate).Average());
    }

    private static double Lufs(double power) => Offset + 10 * Math.Log10(Math.Max(power, 1e-12));

    private sealed class Weighting
    {
        private double s1;
        private double s2;
        private double h1;
        private double h2;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public double Weigh(double x)
        {
            // The head's shelf.
            var shelf = 1.53512485958697 * x + s1;
            s1 = -2.69169618940638 * x + 1.69065929318241 * shelf + s2;
            s2 = 1.19839281085285 * x - 0.73248077421585 * shelf;
            // The revised low-frequency B curve.
            var high = shelf + h1;
            h1 = -2 * shelf + 1.99004745483398 * high + h2;
            h2 = shelf - 0.99007225036621 * high;
            return high;
        }
    }
}
