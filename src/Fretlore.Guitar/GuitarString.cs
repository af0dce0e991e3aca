using System.Globalization;

namespace Fretlore.Guitar;

/// <summary>How a string is made.</summary>
public enum StringMake
{
    /// <summary>One steel wire.</summary>
    Plain,

    /// <summary>A steel core wound with round nickel-plated steel wire.</summary>
    Wound,
}

/// <summary>A string that can be bought, by make and gauge, with its weight.</summary>
/// <remarks>Only strings of <see cref="UnitWeightTable"/> exist. An immutable value.</remarks>
public sealed record GuitarString
{
    internal GuitarString(StringMake make, int gaugeTenThousandths, int unitWeightHundredMillionths)
    {
        Make = make;
        GaugeTenThousandths = gaugeTenThousandths;
        UnitWeight = unitWeightHundredMillionths * 1e-8;
    }

    public StringMake Make { get; }

    /// <summary>Outside diameter in inches.</summary>
    public double Gauge => GaugeTenThousandths / 10_000.0;

    /// <summary>Pounds per inch.</summary>
    public double UnitWeight { get; }

    /// <summary>Kilograms per metre.</summary>
    public double Mass => UnitWeight * 0.45359237 / 0.0254;

    /// <summary>Outside diameter in metres.</summary>
    public double Diameter => Gauge * 0.0254;

    /// <summary>Outside diameter in ten-thousandths of an inch.</summary>
    public int GaugeTenThousandths { get; }

    /// <summary>As printed on packets: <c>.0095</c>, <c>.010</c>, <c>.046w</c>.</summary>
    public override string ToString()
    {
        var digits = GaugeTenThousandths.ToString("0000", CultureInfo.InvariantCulture);
        return "." + (digits.EndsWith('0') ? digits[..3] : digits) + (Make == StringMake.Wound ? "w" : "");
    }
}
