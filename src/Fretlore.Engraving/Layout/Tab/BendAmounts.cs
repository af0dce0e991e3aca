using System.Globalization;

namespace Fretlore.Engraving.Layout.Tab;

/// <summary>How far a bend goes, as printed above its arrow: in whole steps, so that 200 cents is "full" (common practice).</summary>
internal static class BendAmounts
{
    public static string Of(int cents)
    {
        var quarters = (int)Math.Round(cents / 50.0);
        var over = cents - quarters * 50;
        var whole = quarters / 4;
        var part = (quarters % 4) switch { 1 => "\u00BC", 2 => "\u00BD", 3 => "\u00BE", _ => "" };
        var text = whole == 1 && part.Length == 0 ? "full"
            : (whole > 0 ? whole.ToString(CultureInfo.InvariantCulture) : "") + part;
        if (text.Length == 0) text = "0";
        return over == 0 ? text : string.Create(CultureInfo.InvariantCulture, $"{text} {(over > 0 ? "+" : "\u2212")}{Math.Abs(over)}\u00A2");
    }
}
