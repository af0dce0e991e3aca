using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.Hands.Grips;

/// <summary>What a hand can hold: the rules that say which finger may be where beside which.</summary>
internal sealed class GripRules(NeckGeometry geometry, HandSize size, bool allowsThumb = false)
{
    private readonly HandReach reach = new(size);
    private readonly double[] frets =
        [.. Enumerable.Range(0, HighestFret + 1).Select(fret => NeckGeometry.FromNut(geometry.MiddleScaleLength, geometry.Capo.CountedFrom + fret))];

    /// <summary>The highest written fret that is looked at.</summary>
    public const int HighestFret = 48;

    // Strings the thumb can come round to, from the lowest one on.
    private const int StringsForThumb = 2;

    // From the middle of one string to the next where the hand mostly is.
    private double StringSpacing { get; } = (geometry.NutSpacing * 2 + geometry.BridgeSpacing) / 3;

    public int StringCount => geometry.StringCount;

    /// <summary>The capo of the neck.</summary>
    public Capo Capo => geometry.Capo;

    /// <summary>From the nut to a fret, in millimetres.</summary>
    public double Place(int fret) => frets[Math.Clamp(fret, 0, HighestFret)];

    public HandReach Reach => reach;

    /// <summary>True when the finger can press there at all.</summary>
    public bool MayPress(Press press, Finger finger)
    {
        if (press.Stated is { } stated) return finger == stated;
        return finger != Finger.Thumb || allowsThumb && press.String > StringCount - StringsForThumb;
    }

    /// <summary>True when two presses can be held by these fingers at once; what lies between them under a barre is not looked at.</summary>
    public bool MayJoin(Press a, Finger fingerA, Press b, Finger fingerB)
    {
        if (fingerA == fingerB) return a.Fret == b.Fret && Math.Abs(a.String - b.String) < HandCosts.MostBarred(fingerA);
        if (fingerA == Finger.Thumb) return Math.Abs(a.Fret - b.Fret) <= 3 && a.String > b.String;
        if (fingerB == Finger.Thumb) return MayJoin(b, fingerB, a, fingerA);
        if (fingerA > fingerB) return MayJoin(b, fingerB, a, fingerA);
        return a.Fret <= b.Fret && Distance(a, b) <= reach.Most(fingerA, fingerB);
    }

    /// <summary>Between two places under fingers, in millimetres.</summary>
    public double Distance(Press a, Press b)
    {
        var along = Place(a.Fret) - Place(b.Fret);
        var across = (a.String - b.String) * StringSpacing;
        return Math.Sqrt(along * along + across * across);
    }

    /// <summary>True when no finger lies on a string that must sound lower, on the capo, or on a string that another finger holds at the same fret.</summary>
    public static bool LeavesStringsFree(Hold hold, ReadOnlySpan<Finger> fingers)
    {
        for (var i = 0; i < fingers.Length; i++)
        {
            for (var j = i + 1; j < fingers.Length; j++)
            {
                if (fingers[i] != fingers[j]) continue;
                // Presses go from the low string up: i lies on the larger number.
                for (var between = hold.Presses[j].String + 1; between < hold.Presses[i].String; between++)
                {
                    if ((hold.OpenStrings >> between & 1) != 0 || hold.Capo.IsBehind(new StringNumber(between), new Fret(hold.Presses[i].Fret))) return false;
                }
                for (var k = i + 1; k < j; k++)
                {
                    // What lies under the finger at its own fret needs no other one.
                    if (hold.Presses[k].Fret < hold.Presses[i].Fret || hold.Presses[k].Fret == hold.Presses[i].Fret && fingers[k] != fingers[i]) return false;
                }
            }
        }
        return true;
    }

    /// <summary>The positions the hand may stand in for these fingers: at most three.</summary>
    public static int Positions(Hold hold, ReadOnlySpan<Finger> fingers, Span<int> positions)
    {
        var lowest = -1;
        var used = 0;
        for (var i = 0; i < fingers.Length; i++)
        {
            if (fingers[i] == Finger.Thumb) continue;
            if ((used >> (int)fingers[i] & 1) == 0) used |= 1 << (int)fingers[i];
            if (lowest < 0 || fingers[i] < fingers[lowest]) lowest = i;
        }
        if (lowest < 0)
        {
            positions[0] = Math.Max(1, hold.Presses[0].Fret);
            return 1;
        }
        var fret = hold.Presses[lowest].Fret;
        var finger = fingers[lowest];
        var count = 0;
        positions[count++] = Math.Max(1, fret - ((int)finger - 1));
        if (finger == Finger.Index)
        {
            positions[count++] = fret + 1;
        }
        else if (finger == Finger.Little && fret > 4)
        {
            positions[count++] = fret - 4;
        }
        return count;
    }
}
