using System.Globalization;
using Fretlore.Guitar;

namespace Fretlore.Workspace.Questions;

/// <summary>Scale lengths as typed at the prompt: <c>25.5in</c>, <c>648mm</c>, or two of them from the high string to the low one, <c>25.5in-27in</c>.</summary>
public static class ScaleLengthText
{
    private const string HowTo = "Type a number with its unit: \"25.5in\" or \"648mm\"; for two scale lengths the high string's first: \"25.5in-27in\".";

    /// <summary>The length of the highest string and of the lowest, in millimetres.</summary>
    public static Answer<(double High, double Low)> Read(string typed)
    {
        var dash = typed.IndexOf('-', Math.Min(1, typed.Length));
        var high = ReadOne(typed, 0, dash < 0 ? typed.Length : dash);
        if (high.Misread is { } noHigh) return noHigh;
        if (dash < 0) return (high.Value, high.Value);
        var low = ReadOne(typed, dash + 1, typed.Length);
        return low.Misread is { } noLow ? noLow : (high.Value, low.Value);
    }

    private static Answer<double> ReadOne(string typed, int from, int to)
    {
        var text = typed[from..to].Trim();
        Misread Wrong(string message) => new(typed, from + 1, to - from, message, HowTo);
        if (text.Length == 0) return Wrong("The scale length is empty.");
        var unit = text.EndsWith("in", StringComparison.OrdinalIgnoreCase) ? NeckGeometry.MillimetresPerInch
            : text.EndsWith("mm", StringComparison.OrdinalIgnoreCase) ? 1
            : 0;
        if (unit == 0) return Wrong($"\"{text}\" has no unit.");
        if (!double.TryParse(text[..^2], NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var number))
        {
            return Wrong($"\"{text}\" is not a length.");
        }
        var length = number * unit;
        if (length <= 0) return Wrong("A scale length is above zero.");
        if (length is < NeckGeometry.ShortestScale or > NeckGeometry.LongestScale)
        {
            return Wrong($"No neck has a scale length of {text}: they are from {NeckGeometry.ShortestScale} to {NeckGeometry.LongestScale} mm.");
        }
        return length;
    }
}
