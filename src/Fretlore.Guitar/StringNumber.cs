namespace Fretlore.Guitar;

/// <summary>A string by its number: 1 is the highest, as players count.</summary>
/// <param name="Value">1 to 12.</param>
public readonly record struct StringNumber(int Value)
{
    // A song holds as many of these as it has notes.
    private readonly short value = (short)Math.Clamp(Value, short.MinValue, short.MaxValue);

    public int Value
    {
        get => value;
        init => this.value = (short)Math.Clamp(value, short.MinValue, short.MaxValue);
    }

    public override string ToString() => Value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
