namespace Fretlore.Engraving.Layout;

/// <summary>The distances of our pages in staff spaces, in one place.</summary>
/// <remarks>Values marked Gould follow E. Gould, "Behind Bars" (2011), as remembered; line widths come from the music font instead.</remarks>
internal static class HouseStyle
{
    /// <summary>Gould: an octave, three and a half spaces.</summary>
    public const double StemLength = 3.5;

    /// <summary>Gould: never shorter.</summary>
    public const double ShortestStem = 2.5;

    /// <summary>Between two beams of one group, edge to edge (Gould: a quarter of a space; the font says the same).</summary>
    public const double BeamPitch = 0.75;

    public const double TabLineDistance = 1.5;

    public const double StaffHeight = 4;

    public const double FretSize = 1.72;

    public const double GraceScale = 0.66;

    /// <summary>Natural space of a quarter note, head to head; other values by the square root of their ratio.</summary>
    public const double QuarterSpace = 4;

    /// <summary>The least white between the ink of two neighbouring columns.</summary>
    public const double ColumnGap = 0.45;

    /// <summary>From a bar line to the first head.</summary>
    public const double BarLead = 1.25;

    /// <summary>From the ink of the last column to the bar line.</summary>
    public const double BarTail = 0.7;

    public const double MultiRestWidth = 9;

    /// <summary>The least distance from the staff's bottom line to the tablature's top line.</summary>
    public const double StaffToTab = 4.2;

    /// <summary>The least distance from one part's tablature to the next part's staff.</summary>
    public const double PartGap = 5.5;

    /// <summary>The least white between the ink of two systems.</summary>
    public const double SystemGap = 2.4;

    public const double SkylineGap = 0.45;

    public const double ChordSize = 2.15;

    public const double WordSize = 1.9;

    public const double SmallSize = 1.55;

    public const double SectionSize = 2.2;

    public const double TempoSize = 2.0;

    /// <summary>Words over a shorter system may be this long before they are broken.</summary>
    public const double LeastTextWidth = 36;
}
