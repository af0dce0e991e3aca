namespace Fretlore.Exchange.MusicXml;

/// <summary>The staves a part is written on.</summary>
/// <remarks>
/// The standard ties tuning and capo to a tablature staff, and readers that meet a tuning on a staff in treble clef take the staff for tablature
/// and its pitches from string and fret, some of them without the capo. A note that stands on two staves is played twice by most readers.
/// </remarks>
public enum StaffForm
{
    /// <summary>One printed staff in treble clef an octave down, with string and fret at each note; tuning and capo are on a tablature staff that is not printed.</summary>
    Notation,

    /// <summary>One tablature staff with a line a string.</summary>
    Tablature,

    /// <summary>A staff and a tablature staff below it, every note on both, for pages rather than for playing.</summary>
    Both,
}

/// <summary>What follows from a form.</summary>
internal static class StaffForms
{
    /// <summary>True when elements must say which staff they mean.</summary>
    public static bool HasTwoStaves(this StaffForm form) => form != StaffForm.Tablature;
}
