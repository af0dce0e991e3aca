using Fretlore.Score;

namespace Fretlore.Hands.Grips;

/// <summary>How large the fretting hand is.</summary>
public enum HandSize
{
    /// <summary>Reaches a tenth less than an average hand.</summary>
    Small,

    Average,

    /// <summary>Reaches a tenth more than an average hand.</summary>
    Large,
}

/// <summary>How far apart two fingers of one hand can be on a neck, in millimetres.</summary>
/// <remarks>
/// Set by judgement from what players count as a position and as a stretch on a 648 mm neck: four frets from the first (97 mm) are at ease for
/// index and little finger, five frets from the first (126 mm) are the most an average hand does, and six from the first (153 mm) no hand's.
/// </remarks>
public readonly record struct HandReach(HandSize Size)
{
    // Rows by the lower finger, columns by the higher one, index to little.
    private static ReadOnlySpan<double> AtEase =>
    [
        0, 40, 72, 100,
        0, 0, 37, 71,
        0, 0, 0, 37,
    ];

    private static ReadOnlySpan<double> AtMost =>
    [
        0, 76, 106, 135,
        0, 0, 56, 94,
        0, 0, 0, 58,
    ];

    private double Factor => Size switch { HandSize.Small => 0.9, HandSize.Large => 1.1, _ => 1 };

    /// <summary>Without strain.</summary>
    /// <param name="lower">A finger from index to ring.</param>
    /// <param name="higher">A finger further from the thumb.</param>
    public double Comfortable(Finger lower, Finger higher) => Factor * AtEase[4 * ((int)lower - 1) + (int)higher - 1];

    /// <summary>At the end of the hand's reach.</summary>
    /// <param name="lower">A finger from index to ring.</param>
    /// <param name="higher">A finger further from the thumb.</param>
    public double Most(Finger lower, Finger higher) => Factor * AtMost[4 * ((int)lower - 1) + (int)higher - 1];
}
