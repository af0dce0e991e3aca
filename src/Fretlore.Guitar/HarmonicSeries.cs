namespace Fretlore.Guitar;

/// <summary>Which partial sounds when a string is touched over a fret.</summary>
/// <remarks>
/// Touching at the fraction k/n of the string leaves the partial n; a fret f stands at the fraction 1 - 2^(-f/12). Partials up to the
/// sixth are used, and a fret counts when it is within a fifth of a fret from the node: 12 (2nd), 7 and 19 (3rd), 5 and 24 (4th),
/// 4, 9, 16 and 28 (5th), 3 and 31 (6th).
/// </remarks>
public static class HarmonicSeries
{
    private const int HighestPartial = 6;
    private const double NodeTolerance = 0.2;

    /// <summary>Semitones from the sounding length's own pitch up to the harmonic, to the nearest semitone; null where no node is near.</summary>
    /// <param name="distance">Frets between where the string is stopped (or open) and where it is touched.</param>
    public static int? SemitonesAbove(int distance)
    {
        for (var partial = 2; partial <= HighestPartial; partial++)
        {
            for (var part = 1; part < partial; part++)
            {
                var node = -12 * Math.Log2(1 - (double)part / partial);
                if (Math.Abs(node - distance) < NodeTolerance) return (int)Math.Round(12 * Math.Log2(partial));
            }
        }
        return null;
    }

    /// <summary>The frets a natural harmonic can be written at, lowest first.</summary>
    public static IEnumerable<Fret> Nodes =>
        Enumerable.Range(1, 31).Where(f => SemitonesAbove(f) is not null).Select(f => new Fret(f));
}
