namespace Fretlore.Guitar;

/// <summary>A fret counted from the nut or the capo; 0 is the open string.</summary>
/// <param name="Number">0 to 36.</param>
public readonly record struct Fret(int Number)
{
    public static Fret Open => default;

    public bool IsOpen => Number == 0;

    public override string ToString() => Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
