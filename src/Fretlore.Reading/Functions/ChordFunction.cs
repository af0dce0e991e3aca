namespace Fretlore.Reading;

/// <summary>What a chord does in its key.</summary>
public enum HarmonicFunction
{
    /// <summary>Home, or a chord that shares most of its notes.</summary>
    Tonic,

    /// <summary>Leads away from home.</summary>
    Subdominant,

    /// <summary>Leads home.</summary>
    Dominant,

    /// <summary>The dominant of the chord that follows, which is not home.</summary>
    SecondaryDominant,

    /// <summary>Taken from another mode on the same tonic.</summary>
    Borrowed,

    /// <summary>Of no mode on the tonic.</summary>
    Outside,
}

/// <summary>A chord's place in its key.</summary>
/// <param name="Numeral">
/// Roman numeral counted from the major scale on the tonic, as modal music writes it: <c>bVII</c>, <c>iv7</c>, <c>V7/ii</c>. Capitals where the
/// third is major or open, small letters where it is minor; the bass is not in it.
/// </param>
/// <param name="Kind">What it does.</param>
/// <param name="Words">The same in words a teacher can read out, without a full stop.</param>
public sealed record ChordFunction(string Numeral, HarmonicFunction Kind, string Words);

/// <summary>How two chords end a section.</summary>
public enum CadenceKind
{
    /// <summary>Dominant to tonic.</summary>
    Authentic,

    /// <summary>Fourth chord to tonic.</summary>
    Plagal,

    /// <summary>Flat seventh chord to tonic, the close of modal music.</summary>
    Subtonic,

    /// <summary>Flat second chord to tonic.</summary>
    Phrygian,

    /// <summary>Dominant to anything but the tonic.</summary>
    Deceptive,

    /// <summary>Stops on the dominant.</summary>
    Half,
}

/// <summary>A close: the last two chords of a section where they make one.</summary>
/// <param name="Bar">Index of the bar in which the second chord begins.</param>
/// <param name="Kind">Which close.</param>
/// <param name="Words">The same in words, such as <c>bVII to I, a subtonic cadence</c>.</param>
public sealed record Cadence(int Bar, CadenceKind Kind, string Words);
