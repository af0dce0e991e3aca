namespace Fretlore.Engraving.Layout;

/// <summary>What a part is written on.</summary>
public enum Notation
{
    /// <summary>A staff with tablature below.</summary>
    StaffAndTab,

    /// <summary>Tablature with its own stems, beams, flags and rests.</summary>
    Tab,

    /// <summary>A staff alone.</summary>
    Staff,
}
