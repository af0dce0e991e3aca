using Fretlore.Hands.Grips;

namespace Fretlore.Hands.Plans;

/// <summary>What it costs to come from one grip to the next.</summary>
internal static class MoveCost
{
    /// <param name="from">The grip before.</param>
    /// <param name="to">The grip after.</param>
    /// <param name="moment">The moment of the grip after: its links and the time there is.</param>
    /// <param name="rules">Neck and hand.</param>
    /// <param name="parts">Gets the cost by <see cref="Effort"/> added; may be empty.</param>
    public static double Of(Grip from, Grip to, Moment moment, GripRules rules, Span<double> parts) => Of(from, to, moment.Links, moment.TimeToMove, rules, parts);

    /// <param name="from">The grip before.</param>
    /// <param name="to">The grip after.</param>
    /// <param name="links">For each press of the grip after what it comes from.</param>
    /// <param name="timeToMove">Seconds there are for it.</param>
    /// <param name="rules">Neck and hand.</param>
    /// <param name="parts">Gets the cost by <see cref="Effort"/> added; may be empty.</param>
    public static double Of(Grip from, Grip to, ReadOnlySpan<PressLink> links, double timeToMove, GripRules rules, Span<double> parts)
    {
        var shifts = from.Position != to.Position;
        var glides = false;
        var total = 0.0;
        for (var i = 0; i < links.Length; i++)
        {
            var link = links[i];
            if (link.Kind == Joining.None)
            {
                total += SameNoteAgain(from, to, i, parts);
                continue;
            }
            var isSameFinger = from.Fingers[link.From] == to.Fingers[i];
            glides |= link.Kind == Joining.Glide && isSameFinger;
            total += Linked(link.Kind, isSameFinger, shifts, parts);
        }
        return total + (shifts ? Shift(from, to, glides, timeToMove, rules, parts) : Hops(from, to, timeToMove, parts));
    }

    private static double Linked(Joining kind, bool isSameFinger, bool shifts, Span<double> parts) => kind switch
    {
        Joining.Held when !isSameFinger => GripCost.Add(parts, Effort.LostNote, HandCosts.HeldNoteLost),
        Joining.Ringing when !isSameFinger => GripCost.Add(parts, Effort.LostNote, HandCosts.RingingNoteLost),
        Joining.Legato when isSameFinger => GripCost.Add(parts, Effort.Legato, HandCosts.LegatoWithOneFinger),
        Joining.Legato when shifts => GripCost.Add(parts, Effort.Legato, HandCosts.ShiftInLegato),
        Joining.Glide when !isSameFinger => GripCost.Add(parts, Effort.Legato, HandCosts.GlideToOtherFinger),
        _ => 0,
    };

    private static double SameNoteAgain(Grip from, Grip to, int at, Span<double> parts)
    {
        var press = to.Hold.Presses[at];
        for (var i = 0; i < from.Fingers.Length; i++)
        {
            var before = from.Hold.Presses[i];
            if (before.String != press.String) continue;
            return before.Fret == press.Fret && from.Fingers[i] != to.Fingers[at]
                ? GripCost.Add(parts, Effort.Hop, HandCosts.OtherFingerOnSameNote)
                : 0;
        }
        return 0;
    }

    private static double Shift(Grip from, Grip to, bool glides, double time, GripRules rules, Span<double> parts)
    {
        var way = Math.Abs(rules.Place(from.Position) - rules.Place(to.Position));
        var share = glides ? HandCosts.Glide : IsSameShape(from, to) ? HandCosts.SameShape : HasGuide(from, to) ? HandCosts.GuideFinger : 1;
        var hurry = Math.Clamp((way / time / HandCosts.UnhurriedSpeed - 1) * HandCosts.Hurry, 0, HandCosts.MostHurry);
        return GripCost.Add(parts, Effort.Shift, share * (HandCosts.Shift + HandCosts.ShiftPerMillimetre * way))
            + GripCost.Add(parts, Effort.Hurry, share * hurry);
    }

    // Two fingers or more that all stay on their strings.
    private static bool IsSameShape(Grip from, Grip to)
    {
        if (from.Fingers.Length < 2 || !from.Fingers.AsSpan().SequenceEqual(to.Fingers)) return false;
        for (var i = 0; i < from.Fingers.Length; i++)
        {
            if (from.Hold.Presses[i].String != to.Hold.Presses[i].String) return false;
        }
        return true;
    }

    // Where several notes are held, a finger that stays on one string on both sides of a shift leads the hand.
    private static bool HasGuide(Grip from, Grip to)
    {
        if (from.Fingers.Length < 2 && to.Fingers.Length < 2) return false;
        for (var finger = 1; finger < Grip.FingerCount; finger++)
        {
            if (from.Uses(finger) && to.Uses(finger) && from.HighStringOf(finger) == to.HighStringOf(finger)
                && from.LowStringOf(finger) == to.LowStringOf(finger))
            {
                return true;
            }
        }
        return false;
    }

    private static double Hops(Grip from, Grip to, double time, Span<double> parts)
    {
        var total = 0.0;
        for (var finger = 0; finger < Grip.FingerCount; finger++)
        {
            if (!from.Uses(finger) || !to.Uses(finger)) continue;
            total += Hop(from, to, finger);
        }
        if (total == 0) return 0;
        var haste = HandCosts.HopInHaste * HandCosts.ShortTime / (HandCosts.ShortTime + time);
        return GripCost.Add(parts, Effort.Hop, total * haste);
    }

    private static double Hop(Grip from, Grip to, int finger)
    {
        var sharesString = from.HighStringOf(finger) <= to.LowStringOf(finger) && to.HighStringOf(finger) <= from.LowStringOf(finger);
        if (from.FretOf(finger) != to.FretOf(finger)) return sharesString ? HandCosts.Slip : HandCosts.Hop;
        if (sharesString) return 0;
        var gap = Math.Max(from.HighStringOf(finger) - to.LowStringOf(finger), to.HighStringOf(finger) - from.LowStringOf(finger));
        return gap == 1 ? HandCosts.Roll : HandCosts.Hop;
    }
}
