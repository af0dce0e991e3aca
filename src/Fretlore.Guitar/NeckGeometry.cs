namespace Fretlore.Guitar;

/// <summary>A neck as geometry: where each string crosses each fret, in millimetres.</summary>
/// <remarks>
/// Frets stand by equal temperament: fret n is at L (1 - 2^(-n/12)) from the nut, L being the scale length. With two scale lengths each string has
/// its own, spread evenly from the highest string to the lowest, and the frets fan out from the one that stays square to the strings.
/// </remarks>
public sealed record NeckGeometry
{
    /// <summary>Shortest and longest scale length that is taken for one, in millimetres: from a small ukulele to a long bass.</summary>
    public const double ShortestScale = 250, LongestScale = 1000;

    /// <summary>Millimetres in an inch, exactly.</summary>
    public const double MillimetresPerInch = 25.4;

    // From the middle of one string to the next (common practice for electric six-strings: 35 mm over five gaps, 52 mm at the bridge).
    private const double UsualNutSpacing = 7.0, UsualBridgeSpacing = 10.4;

    /// <param name="stringCount">1 to 12.</param>
    /// <param name="scaleLength">Scale length of the highest string in millimetres, above 0.</param>
    /// <param name="lowScaleLength">Scale length of the lowest string; null for the same.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is not above 0, or there are no strings.</exception>
    public NeckGeometry(int stringCount, double scaleLength, double? lowScaleLength = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(stringCount, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(scaleLength);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lowScaleLength ?? scaleLength, nameof(lowScaleLength));
        StringCount = stringCount;
        HighScaleLength = scaleLength;
        LowScaleLength = lowScaleLength ?? scaleLength;
    }

    public int StringCount { get; }

    public double HighScaleLength { get; }

    public double LowScaleLength { get; }

    /// <summary>The capo, which says what the frets asked for count from.</summary>
    public Capo Capo { get; init; }

    /// <summary>Between neighbouring strings at the nut, in millimetres.</summary>
    public double NutSpacing { get; init; } = UsualNutSpacing;

    /// <summary>Between neighbouring strings at the bridge, in millimetres.</summary>
    public double BridgeSpacing { get; init; } = UsualBridgeSpacing;

    /// <summary>The fret, counted from the nut, that stands square to the strings where there are two scale lengths (common practice: 7 to 9).</summary>
    public int SquareFret { get; init; } = 7;

    /// <summary>The geometry of a neck.</summary>
    public static NeckGeometry Of(Neck neck) => new(neck.StringCount, neck.ScaleLength, neck.LowScaleLength) { Capo = neck.Capo };

    /// <summary>From the nut to a fret counted from the nut, along a string of one length.</summary>
    public static double FromNut(double scaleLength, double fret) => scaleLength * (1 - Math.Pow(2, -fret / 12));

    /// <summary>The length of the strings in the middle, where the hand is measured.</summary>
    public double MiddleScaleLength => (HighScaleLength + LowScaleLength) / 2;

    public double ScaleLength(StringNumber number) => StringCount == 1
        ? HighScaleLength
        : HighScaleLength + (LowScaleLength - HighScaleLength) * (number.Value - 1) / (StringCount - 1);

    /// <summary>From the nut to a fret, along the string.</summary>
    public double FromNut(StringNumber number, Fret fret) => FromNut(ScaleLength(number), Capo.FromNut(number, fret));

    /// <summary>What sounds: from the fret to the bridge, along the string.</summary>
    public double SoundingLength(StringNumber number, Fret fret) => ScaleLength(number) - FromNut(number, fret);

    /// <summary>Where a string crosses a fret: along the neck from the square fret (towards the bridge is positive), and across from the highest string.</summary>
    public (double Along, double Across) Crossing(StringNumber number, Fret fret)
    {
        var length = ScaleLength(number);
        var fromNut = FromNut(number, fret);
        var spacing = NutSpacing + (BridgeSpacing - NutSpacing) * fromNut / length;
        return (fromNut - FromNut(length, SquareFret), spacing * (number.Value - 1));
    }

    /// <summary>How far apart two places are on the neck, in millimetres.</summary>
    public double Distance(StringNumber number, Fret fret, StringNumber otherNumber, Fret otherFret)
    {
        var (along, across) = Crossing(number, fret);
        var (otherAlong, otherAcross) = Crossing(otherNumber, otherFret);
        return Math.Sqrt(Square(along - otherAlong) + Square(across - otherAcross));
    }

    private static double Square(double length) => length * length;
}
