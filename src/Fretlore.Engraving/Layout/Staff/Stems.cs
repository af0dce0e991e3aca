using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>How long stems without a beam are.</summary>
internal static class Stems
{
    /// <summary>Where the stem of a lone chord ends, in spaces below the top line.</summary>
    /// <param name="slot">The chord.</param>
    /// <param name="sharesStaff">Whether another voice is in the bar, so that stems may point away from the staff.</param>
    /// <remarks>
    /// Gould: three and a half spaces; to the middle line from beyond the first ledger line; shortened by degrees, never under two and a half,
    /// when pointing out of the staff. Each flag beyond the second lengthens it.
    /// </remarks>
    public static double TipOf(Slot slot, bool sharesStaff)
    {
        var up = slot.Stem == StemSide.Up;
        var head = slot.NearTip;
        var length = HouseStyle.StemLength + Math.Max(0, slot.Flags - 2) * 0.75;
        var outwards = up ? head.Position - 4 : 4 - head.Position;
        if (sharesStaff && outwards > 0) length = Math.Max(HouseStyle.ShortestStem + slot.Flags * 0.25, length - outwards * 0.25);
        length = Math.Max(length, TremoloStrokes.StemFor(slot) + slot.Flags * 0.9);
        return up ? Math.Min(head.Y - length, 2) : Math.Max(head.Y + length, 2);
    }
}
