using Fretlore.Guitar;

namespace Fretlore.Score;

/// <summary>How a note comes to sound.</summary>
public enum Attack : byte
{
    /// <summary>Plucked with the pick or a finger.</summary>
    Picked,

    /// <summary>A fretting finger hammers on from a lower fret (or open) of the same string, not picked.</summary>
    HammerOn,

    /// <summary>A fretting finger pulls off to a lower fret (or open) of the same string, not picked.</summary>
    PullOff,

    /// <summary>Hammered by the fretting hand on a string that was not sounding.</summary>
    HammerFromNowhere,

    /// <summary>Hammered by a finger of the picking hand.</summary>
    Tap,

    /// <summary>Reached by gliding along the string from the note before, not picked on arrival.</summary>
    Glide,

    /// <summary>Reached by gliding from the note before and picked on arrival.</summary>
    PickedGlide,

    /// <summary>Goes on sounding from the note before: a tie.</summary>
    Held,
}

/// <summary>A glide into a note from no fixed fret.</summary>
public enum GlideIn : byte
{
    None,
    FromBelow,
    FromAbove,
}

/// <summary>A glide out of a note to no fixed fret.</summary>
public enum GlideOut : byte
{
    None,
    Downwards,
    Upwards,
}

/// <summary>Kinds of harmonic.</summary>
public enum HarmonicKind
{
    /// <summary>Touched over an open string.</summary>
    Natural,

    /// <summary>Touched a distance above a stopped note.</summary>
    Touched,

    /// <summary>Pinched with the thumb of the picking hand; which partial sounds is left to the player.</summary>
    Pinch,
}

/// <summary>A harmonic on a note.</summary>
/// <param name="Kind">Natural, touched or pinched.</param>
/// <param name="TouchedAt">The fret over which the string is touched; for a pinch, the stopped fret.</param>
public sealed record Harmonic(HarmonicKind Kind, Fret TouchedAt);

/// <summary>A finger of the fretting hand.</summary>
public enum Finger : byte
{
    Thumb = 0,
    Index = 1,
    Middle = 2,
    Ring = 3,
    Little = 4,
}

/// <summary>Direction of the picking hand.</summary>
public enum Stroke : byte
{
    None,
    Down,
    Up,
}

/// <summary>How the notes of one event are spread in time.</summary>
public enum Roll : byte
{
    None,

    /// <summary>From the low string to the high one.</summary>
    LowToHigh,

    /// <summary>From the high string to the low one.</summary>
    HighToLow,

    /// <summary>Raked: from the low string to the high one in one quick stroke before the beat, dead strings on the way.</summary>
    Rake,
}

/// <summary>Spans that an event stands in. Palm mute and let ring are on the notes.</summary>
[Flags]
public enum Spans : byte
{
    None = 0,
    TremoloPicking = 1,
    TremoloArm = 2,
    Wah = 4,
    Crescendo = 8,
    Diminuendo = 16,
}

/// <summary>Dynamics, softest first.</summary>
public enum Dynamic : byte
{
    Pianissimo,
    Piano,
    MezzoPiano,
    MezzoForte,
    Forte,
    Fortissimo,
}
