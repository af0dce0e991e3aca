using System.Globalization;

namespace Fretlore.Lesson.Plans;

/// <summary>Lengths of time as minutes and seconds.</summary>
public static class ClockText
{
    /// <summary>For example 1:05, or 1:02:05 from an hour on; rounded up, so that a sum is never short.</summary>
    public static string Of(double seconds) => Whole((long)Math.Ceiling(seconds - 0.05));

    /// <summary>A moment rather than a length: rounded down.</summary>
    public static string At(double seconds) => Whole((long)Math.Floor(seconds + 0.0005));

    private static string Whole(long seconds) => seconds >= 3600
        ? string.Create(CultureInfo.InvariantCulture, $"{seconds / 3600}:{seconds / 60 % 60:00}:{seconds % 60:00}")
        : string.Create(CultureInfo.InvariantCulture, $"{seconds / 60}:{seconds % 60:00}");
}
