namespace Fretlore.Hands.Shapes;

/// <summary>What it costs a shape to be less than the whole chord, in the points of effort of the hand's costs. Set by judgement.</summary>
internal static class ShapeCosts
{
    /// <summary>The perfect fifth, which changes nothing.</summary>
    public const double FifthMissing = 0.3;

    /// <summary>A ninth or eleventh below a written 11 or 13.</summary>
    public const double TensionMissing = 0.6;

    /// <summary>The root, when another instrument must give it.</summary>
    public const double RootMissing = 2.5;

    /// <summary>Another note of the chord in the bass.</summary>
    public const double OtherBass = 1.2;

    /// <summary>A string that does not sound at the edge of the shape.</summary>
    public const double OuterStringLeft = 0.5;

    /// <summary>A string that must be silenced between others.</summary>
    public const double InnerStringMuted = 1.0;

    /// <summary>Each fret between an open string and the fingers beyond <see cref="NearOpen"/>: the two sound unlike. An open bass is free of it.</summary>
    public const double FarFromOpen = 0.2;

    /// <summary>Frets up to which open strings and fingers belong together.</summary>
    public const int NearOpen = 3;

    /// <summary>Each fret up the neck, where strings are short and charts seldom go.</summary>
    public const double UpTheNeck = 0.04;

    /// <summary>Two strings at one pitch.</summary>
    public const double Unison = 0.3;

    /// <summary>A chord of so many tones can be told without its root.</summary>
    public const int RootlessTones = 4;

    /// <summary>Strings that may be silenced between others.</summary>
    public const int MostInnerMutes = 2;

    /// <summary>Strings that may sound where there are more than eight.</summary>
    public const int MostSounding = 6;
}
