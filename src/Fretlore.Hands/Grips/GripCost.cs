using Fretlore.Score;

namespace Fretlore.Hands.Grips;

/// <summary>What a cost is for.</summary>
public enum Effort
{
    /// <summary>Pressing strings down, with strong or weak fingers.</summary>
    Pressing,

    /// <summary>Fingers further apart than is at ease, or out of the position.</summary>
    Stretch,

    /// <summary>Fingers squeezed together or against the hand's slant.</summary>
    Cramp,

    /// <summary>A finger across several strings.</summary>
    Barre,

    /// <summary>A bend under a weak finger.</summary>
    Bend,

    /// <summary>A change of position.</summary>
    Shift,

    /// <summary>The haste of it.</summary>
    Hurry,

    /// <summary>One finger that is needed again elsewhere.</summary>
    Hop,

    /// <summary>Hammer-ons, pull-offs and glides against their nature.</summary>
    Legato,

    /// <summary>A note let go that should sound on.</summary>
    LostNote,
}

/// <summary>What holding a grip costs.</summary>
internal static class GripCost
{
    /// <summary>The number of <see cref="Effort"/>s.</summary>
    public const int EffortCount = (int)Effort.LostNote + 1;

    /// <summary>From how many cents on a bend asks for a strong finger.</summary>
    public const int LeastBend = 100;

    /// <param name="grip">The grip.</param>
    /// <param name="rules">Its neck and hand.</param>
    /// <param name="parts">Gets the cost by <see cref="Effort"/> added; may be empty.</param>
    public static double Of(Grip grip, GripRules rules, Span<double> parts)
    {
        var total = 0.0;
        var presses = grip.Hold.Presses;
        var lower = -1;
        for (var finger = 0; finger < Grip.FingerCount; finger++)
        {
            if (!grip.Uses(finger)) continue;
            total += Add(parts, Effort.Pressing, HandCosts.Press((Finger)finger));
            total += Barre(grip, finger, parts);
            if (finger == (int)Finger.Thumb) continue;
            total += OutOfPosition(grip, finger, parts);
            if (lower > 0) total += Between(grip, lower, finger, rules, parts);
            lower = finger;
        }
        for (var i = 0; i < presses.Length; i++)
        {
            if (presses[i].BendCents >= LeastBend) total += Add(parts, Effort.Bend, HandCosts.Bend(grip.Fingers[i]));
        }
        if (grip.IsBeyondReach) total += Add(parts, Effort.Stretch, HandCosts.BeyondReach);
        return total;
    }

    internal static double Add(Span<double> parts, Effort effort, double amount)
    {
        if (!parts.IsEmpty) parts[(int)effort] += amount;
        return amount;
    }

    private static double Barre(Grip grip, int finger, Span<double> parts)
    {
        var strings = grip.StringsUnder(finger);
        if (strings < 2 || IsOnlyTouched(grip, finger)) return 0;
        var fret = grip.FretOf(finger);
        var nearNut = fret == 1 ? HandCosts.BarreNearNut : fret == 2 ? HandCosts.BarreNearNut / 2 : 0;
        var amount = HandCosts.Barre + HandCosts.BarrePerString * (strings - 2) + nearNut * (strings - 1);
        for (var other = 0; other < Grip.FingerCount; other++)
        {
            if (other != finger && grip.Uses(other) && grip.FretOf(other) == fret) amount += HandCosts.BarreBesideFinger;
        }
        // The rest of the finger must stay clear of the next string.
        if ((grip.Hold.OpenStrings >> grip.HighStringOf(finger) - 1 & 1) != 0) amount += HandCosts.BarreBesideOpen;
        return Add(parts, Effort.Barre, amount * HandCosts.BarreUnder((Finger)finger));
    }

    private static bool IsOnlyTouched(Grip grip, int finger)
    {
        for (var i = 0; i < grip.Fingers.Length; i++)
        {
            if ((int)grip.Fingers[i] == finger && !grip.Hold.Presses[i].IsTouched) return false;
        }
        return true;
    }

    private static double OutOfPosition(Grip grip, int finger, Span<double> parts)
    {
        var off = grip.FretOf(finger) - (grip.Position + finger - 1);
        if (off == 0) return 0;
        var reaches = finger == (int)Finger.Index ? off < 0 : off > 0;
        return reaches
            ? Add(parts, Effort.Stretch, (off < 0 ? HandCosts.ReachBack : HandCosts.ReachOut) * Math.Abs(off))
            : Add(parts, Effort.Cramp, HandCosts.CrampPerFret * Math.Abs(off));
    }

    private static double Between(Grip grip, int lower, int higher, GripRules rules, Span<double> parts)
    {
        var (low, high) = (NearestPress(grip, lower, higher), NearestPress(grip, higher, lower));
        var beyond = rules.Distance(low, high) - rules.Reach.Comfortable((Finger)lower, (Finger)higher);
        var total = beyond > 0 ? Add(parts, Effort.Stretch, beyond * HandCosts.StretchPerMillimetre) : 0;
        if (grip.FretOf(lower) == grip.FretOf(higher) && grip.LowStringOf(lower) < grip.LowStringOf(higher))
        {
            total += Add(parts, Effort.Cramp, HandCosts.AgainstTheSlant);
        }
        return total;
    }

    // A barre is as near to another finger as its nearest string.
    private static Press NearestPress(Grip grip, int finger, int other)
    {
        var at = Math.Clamp(grip.LowStringOf(other), grip.HighStringOf(finger), grip.LowStringOf(finger));
        return new Press(at, grip.FretOf(finger));
    }
}
