using Fretlore.Music;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>Places in a quarter note that note values give, to the tick.</summary>
internal static class ExactGrid
{
    // Files that count finely are often a whole tick off, since their programs round down.
    private const double FineTicks = 300;

    /// <summary>How a quarter note can be divided, the simplest first; what is no power of two is a tuplet.</summary>
    public static ReadOnlySpan<int> Divisions => [1, 2, 4, 3, 8, 6, 5, 16, 12, 7, 9, 10, 11, 13, 14, 15, 18, 24];

    /// <summary>How far from a place a tick may be that means it, in quarter notes.</summary>
    public static double Tolerance(double ticksPerQuarter) => (ticksPerQuarter >= FineTicks ? 1.01 : 0.51) / ticksPerQuarter;

    public static bool IsOn(double at, int division, double tolerance) => Math.Abs(at * division - Math.Round(at * division)) <= tolerance * division;

    /// <summary>True for a place that values give which are told apart from chance: where ticks are coarse only usual ones are.</summary>
    public static bool IsOnAny(double at, double tolerance)
    {
        if (tolerance > 1 / FineTicks) return IsOn(at, 16, tolerance) || IsOn(at, 12, tolerance) || IsOn(at, 5, tolerance);
        foreach (var division in Divisions)
        {
            if (IsOn(at, division, tolerance)) return true;
        }
        return false;
    }

    /// <summary>The simplest place that a tick means, or the nearest 64th.</summary>
    public static Beats Nearest(double at, double ticksPerQuarter)
    {
        foreach (var division in Divisions)
        {
            if (IsOn(at, division, Tolerance(ticksPerQuarter))) return Beats.Of((long)Math.Round(at * division), division);
        }
        return Beats.Of((long)Math.Round(at * 16), 16);
    }
}
