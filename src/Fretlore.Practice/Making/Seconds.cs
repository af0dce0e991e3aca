namespace Fretlore.Practice.Making;

/// <summary>Times as the page has them.</summary>
internal static class Seconds
{
    /// <summary>To a hundredth of a millisecond, far under a sample.</summary>
    public static double Rounded(double seconds) => Math.Round(seconds, 5);
}
