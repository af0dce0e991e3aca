namespace Fretlore.Engraving.Layout.Fretting;

/// <summary>Which fingers of the fretting hand stand under the tablature.</summary>
public enum FingersShown
{
    None,

    /// <summary>Those the sheet says.</summary>
    Written,

    /// <summary>Those of the sheet, and those of the hand plan where the frets alone don't tell them: where the hand goes to a new position, and where a finger leaves its own fret.</summary>
    Needed,

    /// <summary>Every stopped note's.</summary>
    All,
}

/// <summary>What of the hands stands on pages.</summary>
/// <param name="Fingers">Fingers of the fretting hand.</param>
/// <param name="Positions">Whether a Roman numeral stands where the hand goes to a position and stays in it for a while.</param>
/// <param name="Strokes">Whether strokes and fingers of the picking hand are shown.</param>
/// <param name="PlansStrokes">Whether those that the sheet leaves open are planned and shown too.</param>
public sealed record HandSignOptions(FingersShown Fingers = FingersShown.Written, bool Positions = false, bool Strokes = true, bool PlansStrokes = false)
{
    /// <summary>As we print: fingers where they are needed, and positions.</summary>
    public static HandSignOptions Printed => new(FingersShown.Needed, Positions: true);
}
