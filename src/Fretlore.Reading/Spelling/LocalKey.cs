using Fretlore.Music;

namespace Fretlore.Reading.Spelling;

/// <summary>A key that a few notes may be in for a moment, for spelling's sake: its tonic on the line of fifths, major or minor.</summary>
/// <param name="Tonic">Place on the line of fifths, <see cref="Lowest"/> to <see cref="Highest"/>: C is 0, G is 1.</param>
/// <param name="IsMinor">True for minor, with its raised seventh.</param>
internal readonly record struct LocalKey(int Tonic, bool IsMinor)
{
    /// <summary>Ebb: as flat as music in seven flats goes for a moment.</summary>
    public const int Lowest = -10;

    /// <summary>B#.</summary>
    public const int Highest = 12;

    /// <summary>How many there are.</summary>
    public const int Count = 2 * (Highest - Lowest + 1);

    // Sixth and seventh degree of minor as they rise.
    private const int MajorSixth = 3;
    private const int LeadingNote = 5;

    /// <summary>The middle of its seven notes on the line of fifths.</summary>
    public int Centre => IsMinor ? Tonic - 1 : Tonic + 2;

    /// <param name="index">0 to <see cref="Count"/> - 1.</param>
    public static LocalKey At(int index) => new(Lowest + index / 2, index % 2 == 1);

    /// <summary>The local key of a key: of the same tonic, minor where the mode's third is.</summary>
    public static LocalKey Of(Key key)
    {
        var tonic = key.Tonic.Fifths;
        // Triple signs are beyond it: the same sound nearer by.
        while (tonic < Lowest) tonic += 12;
        while (tonic > Highest) tonic -= 12;
        return new LocalKey(tonic, key.IsMinor);
    }

    public int Index => 2 * (Tonic - Lowest) + (IsMinor ? 1 : 0);

    /// <summary>True for its seven notes.</summary>
    public bool HasNaturally(int fifths) => Math.Abs(fifths - Centre) <= 3;

    /// <summary>True for its seven notes, and in minor for the raised seventh.</summary>
    public bool Has(int fifths) => HasNaturally(fifths) || IsMinor && fifths - Tonic == LeadingNote;

    /// <summary>True for a note that a line may lead to: one it has, and in minor the raised sixth.</summary>
    public bool Leads(int fifths) => Has(fifths) || IsMinor && fifths - Tonic == MajorSixth;
}
