namespace Fretlore.Hands.Picking;

/// <summary>What the picking hand would rather not do, in points: set by judgement from what teachers of alternate picking and of classical technique say (common practice).</summary>
internal static class PickingCosts
{
    /// <summary>Seconds within which a stroke the same way, or the same finger again, is hard; with more time it is ever less so.</summary>
    public const double ShortTime = 0.16;

    /// <summary>An upstroke on a beat, or a downstroke between two halves of the smallest value around: against the hand's swing.</summary>
    public const double AgainstTheBeat = 0.5;

    /// <summary>Two strokes the same way at <see cref="ShortTime"/>.</summary>
    public const double SameWay = 1.2;

    /// <summary>The same, when the pick goes on through to the string beside within <see cref="ShortTime"/>: haste makes it no harder, and the beat is not looked at.</summary>
    public const double Sweep = 0.2;

    /// <summary>A change of string around the two strings at <see cref="ShortTime"/>, and one with the pick caught between them.</summary>
    public const double OutsideChange = 0.08, InsideChange = 0.15;

    /// <summary>A chord of three or more strings struck upwards on a beat.</summary>
    public const double ChordUpwards = 0.4;

    /// <summary>A line that begins with an upstroke.</summary>
    public const double BeginsUpwards = 0.3;

    /// <summary>The same finger again at <see cref="ShortTime"/>; the thumb is used to it.</summary>
    public const double SameFinger = 1.2, SameThumb = 0.4;

    /// <summary>A finger for each string away from the one it rests at: i at the third, m at the second, a at the first.</summary>
    public const double AwayFromRest = 0.35;

    /// <summary>The thumb for each string above the fourth.</summary>
    public const double ThumbUp = 0.6;

    /// <summary>A finger for each string below the third.</summary>
    public const double FingerDown = 0.7;

    /// <summary>A bass voice without the thumb.</summary>
    public const double BassWithoutThumb = 1.5;

    /// <summary>A finger that crosses over: a lower finger on a higher string than the finger before, close together in time.</summary>
    public const double CrossedOver = 0.5;

    // However little time there is, it costs no more than this many times as much.
    private const double MostHaste = 3;

    /// <summary>A cost that holds at <see cref="ShortTime"/>, with other time: twice the time, a quarter of it.</summary>
    public static double InHaste(double cost, double seconds) => cost * Math.Min(MostHaste, ShortTime * ShortTime / (seconds * seconds));
}
