using System.Globalization;
using Fretlore.Score;

namespace Fretlore.Hands.Plans;

/// <summary>Fingers and small numbers as a teacher says them.</summary>
internal static class FingerWords
{
    public static string Of(Finger finger) => finger switch
    {
        Finger.Thumb => "thumb",
        Finger.Index => "index finger",
        Finger.Middle => "middle finger",
        Finger.Ring => "ring finger",
        _ => "little finger",
    };

    public static string Count(int number)
    {
        ReadOnlySpan<string> words = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
        return number >= 0 && number < words.Length ? words[number] : number.ToString(CultureInfo.InvariantCulture);
    }
}
