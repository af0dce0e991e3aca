namespace Fretlore.RoadMaps.Search;

/// <summary>Costs in bits as weights: a bit more is half as likely.</summary>
/// <remarks>In sixteenths of a bit and from a table, so that every machine weighs alike.</remarks>
internal static class Bits
{
    private const double Dearest = 48;

    // 2^(-n/16)
    private static ReadOnlySpan<double> Sixteenths =>
    [
        1, 0.9576032806985737, 0.9170040432046712, 0.8781260801866497, 0.8408964152537145, 0.8052451659746271, 0.7711054127039704, 0.7384130729697496,
        0.7071067811865476, 0.6771277734684463, 0.6484197773255048, 0.6209289060367420, 0.5946035575013605, 0.5693943173783458, 0.5452538663326288, 0.5221368912137069,
    ];

    public static double Weight(double bits)
    {
        // Dear is not forbidden: what the rules allow keeps some chance.
        var units = (int)Math.Floor(Math.Min(bits, Dearest) * 16 + 0.5);
        var whole = units >> 4;
        return Math.ScaleB(Sixteenths[units & 15], -whole);
    }
}
