using Fretlore.Guitar;

namespace Fretlore.Sound.Strings;

/// <summary>What a string is made of, as far as it is heard: how stiff it is and how it loses its energy.</summary>
/// <param name="OpenHertz">Frequency of the open string, capo included.</param>
/// <param name="Stiffness">Inharmonicity B of the open string: partial n lies at n f0 sqrt(1 + B n²) (Fletcher and Rossing, The Physics of Musical Instruments).</param>
/// <param name="BaseLoss">Decay rate of the lowest partials, in nepers a second.</param>
/// <param name="LossByFrequency">What is added to it per hertz squared.</param>
internal readonly record struct StringBuild(double OpenHertz, double Stiffness, double BaseLoss, double LossByFrequency)
{
    private const double SteelDensity = 7850; // kg/m³
    private const double SteelElasticity = 2.0e11; // Pa
    private const double ThickestPlain = 0.00051; // m, a 20 gauge: thicker ones are wound (common practice)

    /// <summary>The string the sheet says, or the one a player would put on for this pitch: of steel, at an ordinary tension for the scale length.</summary>
    /// <param name="number">The string.</param>
    /// <param name="neck">Its neck.</param>
    /// <param name="body">How much the instrument takes from the string.</param>
    /// <param name="said">The string that is on; null where the sheet does not say, so that its gauge follows from pitch and scale length.</param>
    public static StringBuild Of(StringNumber number, Neck neck, BodyLoss body, GuitarString? said = null)
    {
        var open = neck.Open(number).Hertz();
        var uncapoed = neck.Tuning[number].Height.Hertz();
        var length = NeckGeometry.Of(neck).ScaleLength(number) / 1000;
        // 75 N (17 lbf) is what most sets have; a bass string has twice that (common practice).
        double tension = uncapoed < 62 ? 150 : 75;
        var squared = Math.Pow(2 * length * uncapoed, 2);
        var massPerMetre = said?.Mass ?? tension / squared;
        if (said is not null) tension = massPerMetre * squared;
        // As thick as solid steel of that weight: so near is wire, and the winding's gaps are left out.
        var diameter = Math.Sqrt(4 * massPerMetre / (Math.PI * SteelDensity));
        var isWound = said is null ? diameter > ThickestPlain : said.Make == StringMake.Wound;
        var bending = isWound ? CoreOf(diameter) : diameter;
        var speaking = length * Math.Pow(2, -neck.Capo.On(number) / 12.0);
        // B = π³ E d⁴ / (64 T L²), Fletcher 1964.
        var stiffness = Math.Pow(Math.PI, 3) * SteelElasticity * Math.Pow(bending, 4) / (64 * tension * speaking * speaking);
        return new StringBuild(open, Math.Min(stiffness, 1e-3), body.Base, body.ByFrequency * (isWound ? 1.6 : 1));
    }

    // Only the core of a wound string is stiff, and it grows more slowly than what is wound round it: about 0.35 mm in the thinnest and
    // 0.75 mm in a bass's lowest. A straight line through common sets, from memory, set so that a bass's B0 has what Kemp (2020) measured.
    private static double CoreOf(double diameter) => 0.25e-3 + 0.17 * diameter;

    /// <summary>Inharmonicity when the string is shortened to sound at a frequency: it grows with the inverse square of the length.</summary>
    public double StiffnessAt(double hertz) => Math.Min(Stiffness * Math.Pow(hertz / OpenHertz, 2), 4e-3);

    /// <summary>Nepers a second at a frequency (the two-term law of Chaigne and Askenfelt 1994).</summary>
    public double LossAt(double hertz) => BaseLoss + LossByFrequency * hertz * hertz;
}

/// <summary>How fast an instrument takes a string's energy; the values are ours, by ear, of the order of published decay times.</summary>
/// <param name="Base">Nepers a second.</param>
/// <param name="ByFrequency">Nepers a second per hertz squared.</param>
internal readonly record struct BodyLoss(double Base, double ByFrequency)
{
    public static BodyLoss Solid => new(0.55, 1.2e-6);

    public static BodyLoss Hollow => new(1.2, 2.6e-6);
}
