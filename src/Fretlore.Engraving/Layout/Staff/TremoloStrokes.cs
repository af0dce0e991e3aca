using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Staff;

/// <summary>The strokes through a stem that say how fast a note is picked again.</summary>
internal static class TremoloStrokes
{
    /// <summary>From the stem's middle to the strokes' ends, with air.</summary>
    public const double HalfWidth = 0.75;

    /// <summary>How many a chord has; 0 for none. Flags and beams of its own value count as strokes.</summary>
    public static int Of(Slot slot)
    {
        foreach (var head in slot.Heads)
        {
            if (head.Note.Tremolo is { } value) return Math.Clamp(Slot.FlagsOf(value) - slot.Flags, 1, 4);
        }
        return 0;
    }

    public static double Height(int strokes) => 0.75 * strokes + 0.2;

    /// <summary>From the head's middle to the nearest stroke; more where an accidental stands on the stem's side.</summary>
    public static double FromHead(Slot slot) => slot.Stem == StemSide.Down && slot.Heads.Any(h => h.Accidental is not null) ? 1.6 : 0.75;

    /// <summary>The least stem that has room for them, flags and beams apart.</summary>
    public static double StemFor(Slot slot) => Of(slot) is var strokes and > 0 ? FromHead(slot) + Height(strokes) + 0.3 : 0;
}
