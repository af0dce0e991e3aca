using System.Globalization;

namespace Fretlore.Workspace.Questions;

/// <summary>A speed as typed at the prompt: <c>60%</c>, or <c>60</c>.</summary>
public static class SpeedText
{
    /// <summary>The share of the written tempo.</summary>
    public static Answer<decimal> Read(string typed)
    {
        var number = typed.Trim().TrimEnd('%').TrimEnd();
        if (decimal.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var percent) && percent is > 0 and < 10_000) return percent / 100;
        return new Misread(typed, 1, typed.Length, "That is no speed.", "Type a share of the written tempo, such as 60%.");
    }
}
