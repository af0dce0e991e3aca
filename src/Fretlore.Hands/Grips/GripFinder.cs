using Fretlore.Score;

namespace Fretlore.Hands.Grips;

/// <summary>Finds every way a hand can hold what must sound at one moment.</summary>
internal sealed class GripFinder(GripRules rules)
{
    private static readonly Finger[] Fingers = [Finger.Thumb, Finger.Index, Finger.Middle, Finger.Ring, Finger.Little];

    /// <summary>All grips, in a fixed order; none when no hand can do it.</summary>
    /// <remarks>Where only the sheet's own fingers are out of reach, these are kept all the same and the grips say so.</remarks>
    public Grip[] Find(Hold hold)
    {
        var grips = new List<Grip>();
        Span<Finger> fingers = stackalloc Finger[hold.Presses.Length];
        Assign(hold, fingers, 0, isBeyondReach: false, grips);
        if (grips.Count == 0 && hold.Presses.Any(press => press.Stated is not null)) Assign(hold, fingers, 0, isBeyondReach: true, grips);
        return [.. grips];
    }

    private void Assign(Hold hold, Span<Finger> fingers, int at, bool isBeyondReach, List<Grip> grips)
    {
        if (at == fingers.Length)
        {
            Close(hold, fingers, isBeyondReach, grips);
            return;
        }
        foreach (var finger in Fingers)
        {
            if (!rules.MayPress(hold.Presses[at], finger)) continue;
            fingers[at] = finger;
            var fits = true;
            for (var i = 0; i < at && fits; i++)
            {
                // What the sheet says is kept even where it is out of reach, but a finger is in one place only.
                fits = isBeyondReach && hold.Presses[i].Stated is not null && hold.Presses[at].Stated is not null
                    ? fingers[i] != finger || hold.Presses[i].Fret == hold.Presses[at].Fret
                    : rules.MayJoin(hold.Presses[i], fingers[i], hold.Presses[at], finger);
            }
            if (fits) Assign(hold, fingers, at + 1, isBeyondReach, grips);
        }
    }

    private void Close(Hold hold, ReadOnlySpan<Finger> fingers, bool isBeyondReach, List<Grip> grips)
    {
        if (!GripRules.LeavesStringsFree(hold, fingers)) return;
        Span<int> positions = stackalloc int[3];
        var count = GripRules.Positions(hold, fingers, positions);
        foreach (var position in positions[..count])
        {
            var grip = new Grip(hold, fingers, position, isBeyondReach);
            grip.Cost = GripCost.Of(grip, rules, []);
            grips.Add(grip);
        }
    }
}
