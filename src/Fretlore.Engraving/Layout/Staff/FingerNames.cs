using System.Globalization;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Fretting fingers as they are printed: 1 to 4 from the index on, T for the thumb (common practice).</summary>
internal static class FingerNames
{
    public static string Of(Finger finger) => finger == Finger.Thumb ? "T" : ((int)finger).ToString(CultureInfo.InvariantCulture);
}
