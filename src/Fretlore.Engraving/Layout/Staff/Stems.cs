using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>How long stems without a beam are.</summary>
internal static class Stems
{
    // How far one flag hangs from a stem's end, as far as tremolo strokes must keep off it.
    private const double FlagHeight = 2.4;

    // How far the brackets around several heads reach over the outermost.
    private const double GhostBracketHeight = 0.5;

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
        var length = LengthOf(slot.Flags, head.Shape);
        // A head right of the stem would be under the flag.
        if (up && slot.Flags > 0 && slot.Shape.HeadX.Any(x => x > slot.Shape.StemX - 0.2)) length += 0.6;
        else if (slot.Flags > 0 && !IsHigh(head.Shape) && slot.Heads.Any(h => IsHigh(h.Shape) && Math.Abs(h.Position - head.Position) <= 1)) length += 0.5;
        else if (slot.Flags > 0 && slot.Heads.Count(h => h.Note.IsGhost) > 1) length += GhostBracketHeight;
        var outwards = up ? head.Position - 4 : 4 - head.Position;
        // A shorter stem would bring a flag to the head.
        if (sharesStaff && outwards > 0 && slot.Flags == 0) length = Math.Max(HouseStyle.ShortestStem, length - outwards * 0.25);
        length = Math.Max(length, TremoloStrokes.StemFor(slot) + (slot.Flags == 0 ? 0 : FlagHeight + (slot.Flags - 1) * 0.75));
        return up ? Math.Min(head.Y - length, 2) : Math.Max(head.Y + length, 2);
    }

    /// <summary>Where a stem ends that nothing shortens.</summary>
    public static double FreeTip(Head head, StemSide side, int flags) =>
        side == StemSide.Up ? Math.Min(head.Y - LengthOf(flags, head.Shape), 2) : Math.Max(head.Y + LengthOf(flags, head.Shape), 2);

    private static double LengthOf(int flags, HeadShape head) =>
        HouseStyle.StemLength + Math.Max(0, flags - 2) * 0.75 + (flags > 0 && IsHigh(head) ? 0.5 : 0);

    // Diamonds and crosses are higher than round heads.
    private static bool IsHigh(HeadShape head) => head is HeadShape.BlackDiamond or HeadShape.OpenDiamond or HeadShape.Cross;
}
