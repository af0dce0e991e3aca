namespace Fretlore.Sound.Rigs;

/// <summary>Keeps filter memories out of the range where processors are slow.</summary>
internal static class Denormal
{
    private const double Floor = 1e-30; // 600 dB down.

    public static double Settle(double value) => Math.Abs(value) < Floor ? 0 : value;
}
