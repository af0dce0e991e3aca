using System.Globalization;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>Fretting fingers as they are printed: by number, T for the thumb.</summary>
internal static class FingerNames
{
    public static string Of(Finger finger) => finger == Finger.Thumb ? "T" : ((int)finger).ToString(CultureInfo.InvariantCulture);

    /// <summary>Those of a column, of all voices, string by string; one that lies across several strings stands once.</summary>
    public static string[] In(MeasurePart part, int column, HandSigns hands, bool lowFirst)
    {
        if (!HasAny(part, column, hands)) return [];
        var heads = part.SlotsIn(column).SelectMany(s => s.Heads);
        heads = lowFirst ? heads.OrderByDescending(h => h.Note.String.Value) : heads.OrderBy(h => h.Note.String.Value);
        return [.. heads.Select(h => hands.FingerOf(h.Note)).OfType<Finger>().Distinct().Select(Of)];
    }

    private static bool HasAny(MeasurePart part, int column, HandSigns hands)
    {
        foreach (var voice in part.Voices)
        {
            foreach (var slot in voice.Slots)
            {
                if (slot.Column != column) continue;
                foreach (var head in slot.Heads)
                {
                    if (hands.FingerOf(head.Note) is not null) return true;
                }
            }
        }
        return false;
    }
}
