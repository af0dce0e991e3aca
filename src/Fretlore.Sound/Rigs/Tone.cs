namespace Fretlore.Sound.Rigs;

/// <summary>Shapes of one filter of a tone stack.</summary>
internal enum ToneKind
{
    HighPass,
    LowPass,
    Peak,
    LowShelf,
    HighShelf,
}

/// <summary>One filter of a tone stack or cabinet.</summary>
/// <param name="Kind">Its shape.</param>
/// <param name="Hertz">Corner or centre.</param>
/// <param name="Decibels">Gain of peaks and shelves.</param>
/// <param name="Q">Sharpness.</param>
internal readonly record struct Tone(ToneKind Kind, double Hertz, double Decibels = 0, double Q = 0.7071)
{
    public static Tone HighPass(double hertz, double q = 0.7071) => new(ToneKind.HighPass, hertz, 0, q);

    public static Tone LowPass(double hertz, double q = 0.7071) => new(ToneKind.LowPass, hertz, 0, q);

    public static Tone Peak(double hertz, double decibels, double q = 1) => new(ToneKind.Peak, hertz, decibels, q);

    public static Tone LowShelf(double hertz, double decibels) => new(ToneKind.LowShelf, hertz, decibels);

    public static Tone HighShelf(double hertz, double decibels) => new(ToneKind.HighShelf, hertz, decibels);
}
