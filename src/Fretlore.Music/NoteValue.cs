namespace Fretlore.Music;

/// <summary>The undotted note values; the number is how many make a whole note.</summary>
public enum ValueBase : byte
{
    Whole = 1,
    Half = 2,
    Quarter = 4,
    Eighth = 8,
    Sixteenth = 16,
    ThirtySecond = 32,
    SixtyFourth = 64,
}

/// <summary>A written note value: a base with up to two dots.</summary>
/// <param name="Base">Whole to 64th.</param>
/// <param name="Dots">0 to 2.</param>
public readonly record struct NoteValue(ValueBase Base, int Dots = 0)
{
    // A byte: a song holds as many of these as it has events.
    private readonly byte dots = checked((byte)Dots);

    public int Dots
    {
        get => dots;
        init => dots = checked((byte)value);
    }

    /// <summary>Its length outside any tuplet, in quarter notes.</summary>
    public Beats Length
    {
        get
        {
            var plain = Beats.Of(4, (int)Base);
            return Dots switch { 0 => plain, 1 => plain * Beats.Of(3, 2), _ => plain * Beats.Of(7, 4) };
        }
    }
}

/// <summary>A tuplet ratio: <paramref name="Count"/> units in the time of <paramref name="InTimeOf"/>.</summary>
/// <param name="Count">How many units are played; 2 to 255.</param>
/// <param name="InTimeOf">How many units' time they take; 1 to 255.</param>
/// <param name="Unit">The value that is counted, 3 eighths in the time of 2.</param>
public readonly record struct Tuplet(int Count, int InTimeOf, ValueBase Unit)
{
    private readonly byte count = checked((byte)Count);
    private readonly byte inTimeOf = checked((byte)InTimeOf);

    public int Count
    {
        get => count;
        init => count = checked((byte)value);
    }

    public int InTimeOf
    {
        get => inTimeOf;
        init => inTimeOf = checked((byte)value);
    }

    /// <summary>What a written value is multiplied by to give its sounding length.</summary>
    public Beats Factor => Beats.Of(InTimeOf, Count);

    /// <summary>The sounding length of one complete group; brackets close when a multiple of it is full.</summary>
    public Beats GroupLength => Beats.Of(4, (int)Unit) * InTimeOf;

    /// <summary>How many units' time so many notes usually take: 3 in the time of 2, 2 of 3, 4 of 3, 5 to 7 of 4, 8 to 15 of 8 (common practice).</summary>
    public static int UsualTimeOf(int count) => count switch
    {
        2 => 3,
        3 => 2,
        4 => 3,
        <= 7 => 4,
        <= 15 => 8,
        _ => 16,
    };
}
