using System.Collections.Immutable;

namespace Fretlore.Guitar;

/// <summary>What a string weighs by gauge: plain steel and nickel-plated steel round wound.</summary>
/// <remarks>
/// Source: a string maker's published tension chart, as transcribed in the MIT-licensed package stringcalc (unit weights in pounds per inch; 55 gauges).
/// T = UW (2 L F)^2 / 386.4 with these weights gives back the chart's 437 tensions within 0.07 lbf.
/// </remarks>
public static class UnitWeightTable
{
    /// <summary>The gauges there are, thin to thick, plain ones first.</summary>
    public static ImmutableArray<GuitarString> All { get; } = [.. Rows(StringMake.Plain, Plain), .. Rows(StringMake.Wound, Wound)];

    // Ten-thousandths of an inch, hundred-millionths of a pound per inch.
    private static (int Gauge, int Weight)[] Plain =>
    [
        (70, 1085), (80, 1418), (85, 1601), (90, 1794), (95, 1999), (100, 2215), (105, 2442), (110, 2680),
        (115, 2930), (120, 3190), (130, 3744), (135, 4037), (140, 4342), (150, 4984), (160, 5671), (170, 6402),
        (180, 7177), (190, 7997), (200, 8861), (220, 10722), (240, 12760), (260, 14975),
    ];

    private static (int Gauge, int Weight)[] Wound =>
    [
        (170, 5524), (180, 6215), (190, 6947), (200, 7495), (210, 8293), (220, 9184), (240, 10857), (260, 12671),
        (280, 14666), (300, 17236), (320, 19347), (340, 21590), (360, 23964), (380, 26471), (390, 27932), (420, 32279),
        (440, 35182), (460, 38216), (480, 41382), (490, 43014), (520, 48109), (540, 53838), (560, 57598), (590, 64191),
        (600, 66542), (620, 70697), (640, 74984), (660, 79889), (680, 84614), (700, 89304), (720, 94124), (740, 98869),
        (800, 115011),
    ];

    private static ImmutableArray<GuitarString> Rows(StringMake make, (int Gauge, int Weight)[] rows)
    {
        var strings = ImmutableArray.CreateBuilder<GuitarString>(rows.Length);
        foreach (var (gauge, weight) in rows) strings.Add(new GuitarString(make, gauge, weight));
        return strings.MoveToImmutable();
    }
}
