namespace Fretlore.Exchange.MusicXml;

/// <summary>The staves a part is written on.</summary>
public enum StaffForm
{
    /// <summary>One staff in treble clef an octave down; string and fret are with each note.</summary>
    Notation,

    /// <summary>One tablature staff with a line a string.</summary>
    Tablature,

    /// <summary>A staff and a tablature staff below it, every note on both. Readers that don't know the form play each note twice.</summary>
    Both,
}
