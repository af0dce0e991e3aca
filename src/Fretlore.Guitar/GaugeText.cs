using System.Globalization;

namespace Fretlore.Guitar;

/// <summary>Why a gauge could not be read.</summary>
public enum GaugeProblem
{
    None,

    /// <summary>It is no number of thousandths of an inch.</summary>
    NotANumber,

    /// <summary>It is thinner or thicker than any string of the table.</summary>
    OutOfRange,

    /// <summary>It is within the range, but there is no such string.</summary>
    NotMade,
}

/// <summary>A gauge as it was read.</summary>
/// <param name="String">The string; where there is a problem, the nearest one there is (null when it is no number).</param>
/// <param name="Problem">What is wrong with it.</param>
public readonly record struct ReadGauge(GuitarString? String, GaugeProblem Problem);

/// <summary>Gauges as players write them: <c>10</c>, <c>.010</c>, <c>9.5</c>, <c>.046w</c> for wound, <c>20p</c> for plain.</summary>
public static class GaugeText
{
    // Where both makes exist and neither is said: thicker than this is wound (common practice).
    private const int ThickestUsualPlain = 200;

    /// <summary>Thinnest and thickest gauge there is, in thousandths of an inch.</summary>
    public static (int Thinnest, int Thickest) Range =>
        (UnitWeightTable.All.Min(s => s.GaugeTenThousandths) / 10, UnitWeightTable.All.Max(s => s.GaugeTenThousandths) / 10);

    public static ReadGauge Read(ReadOnlySpan<char> text)
    {
        StringMake? said = null;
        if (!text.IsEmpty && char.ToLowerInvariant(text[^1]) is 'w' or 'p')
        {
            said = char.ToLowerInvariant(text[^1]) == 'w' ? StringMake.Wound : StringMake.Plain;
            text = text[..^1];
        }
        if (!decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) || number > 1000)
        {
            return new ReadGauge(null, GaugeProblem.NotANumber);
        }
        var tenThousandths = number < 1 ? number * 10_000 : number * 10;
        var make = said ?? (tenThousandths > ThickestUsualPlain ? StringMake.Wound : StringMake.Plain);
        var ofMake = UnitWeightTable.All.Where(s => s.Make == make).ToList();
        var nearest = ofMake.MinBy(s => Math.Abs(s.GaugeTenThousandths - tenThousandths))!;
        if (nearest.GaugeTenThousandths == tenThousandths) return new ReadGauge(nearest, GaugeProblem.None);
        var (thinnest, thickest) = Range;
        var isWithin = tenThousandths >= thinnest * 10 && tenThousandths <= thickest * 10;
        return new ReadGauge(nearest, isWithin ? GaugeProblem.NotMade : GaugeProblem.OutOfRange);
    }
}
