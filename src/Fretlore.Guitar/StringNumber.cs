namespace Fretlore.Guitar;

/// <summary>A string by its number: 1 is the highest, as players count.</summary>
/// <param name="Value">1 to 12.</param>
public readonly record struct StringNumber(int Value)
{
    public override string ToString() => Value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
