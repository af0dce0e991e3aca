namespace Fretlore.Guitar;

/// <summary>A fret as written: counted from the capo where it covers all strings, or else from the nut; 0 is the open string.</summary>
/// <param name="Number">0 to 36.</param>
public readonly record struct Fret(int Number)
{
    public static Fret Open => default;

    public bool IsOpen => Number == 0;

    public override string ToString() => Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
