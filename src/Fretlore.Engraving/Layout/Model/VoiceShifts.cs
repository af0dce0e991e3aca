using System.Collections.Immutable;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>Moves the lower voice's chord aside where its heads would touch the upper voice's.</summary>
internal static class VoiceShifts
{
    public static ImmutableArray<Voice> Apart(ImmutableArray<Voice> voices)
    {
        var apart = voices.ToBuilder();
        for (var v = 1; v < voices.Length; v++)
        {
            var slots = voices[v].Slots.ToBuilder();
            for (var i = 0; i < slots.Count; i++)
            {
                var above = voices[0].Slots.FirstOrDefault(s => s.Column == slots[i].Column);
                if (above is null || above.IsRest || slots[i].IsRest) continue;
                if (ShiftOf(above, slots[i]) is var shift and not 0) slots[i] = slots[i] with { Shift = shift };
            }
            apart[v] = voices[v] with { Slots = slots.ToImmutable() };
        }
        return apart.ToImmutable();
    }

    // Gould: heads of the same look share a unison; a second stands side by side, the stem-up note left; crossing voices need more room.
    private static double ShiftOf(Slot up, Slot down)
    {
        var interval = up.Lowest.Position - down.Highest.Position;
        if (interval > 1) return 0;
        var unison = interval == 0 && up.Lowest.Shape == down.Highest.Shape && up.Event.Value.Dots == down.Event.Value.Dots;
        if (unison) return 0;
        return interval == 1 ? 1.08 : up.Flags > 0 && up.Beam < 0 ? 1.9 : 1.35;
    }
}
