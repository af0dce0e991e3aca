using System.Globalization;
using System.Text;

namespace Fretlore.Engraving.Output;

/// <summary>Numbers as SVG has them: a point for decimals, at most three of them, no zeros behind.</summary>
internal static class SvgNumber
{
    public static StringBuilder Number(this StringBuilder to, double value)
    {
        if (!double.IsFinite(value)) throw new ArgumentOutOfRangeException(nameof(value), value, "A mark stands at no finite place.");
        var thousandths = (long)Math.Round(value * 1000, MidpointRounding.AwayFromZero);
        if (thousandths < 0)
        {
            to.Append('-');
            thousandths = -thousandths;
        }

        var (whole, part) = Math.DivRem(thousandths, 1000);
        to.Append(CultureInfo.InvariantCulture, $"{whole}");
        if (part == 0) return to;
        to.Append('.').Append((char)('0' + part / 100));
        if (part % 100 == 0) return to;
        to.Append((char)('0' + part / 10 % 10));
        if (part % 10 != 0) to.Append((char)('0' + part % 10));
        return to;
    }

    /// <summary>A place with a space between its numbers.</summary>
    public static StringBuilder Place(this StringBuilder to, Drawing.Point point) => to.Number(point.X).Append(' ').Number(point.Y);
}
