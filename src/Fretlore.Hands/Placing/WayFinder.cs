using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;
using Fretlore.Score;

namespace Fretlore.Hands.Placing;

/// <summary>Finds the ways to place the notes of one moment beside what sounds on from before.</summary>
internal sealed class WayFinder
{
    private readonly IReadOnlyList<OpenNote> notes;
    private readonly PlaceChain[] chains;
    private readonly (int Chain, int Step)[] chainOf;
    private readonly GripRules rules;
    private readonly HoldTable holds;
    private readonly PlaceMoment moment;
    private readonly OnString[] before;
    private readonly OnString[] strings;
    private readonly bool[] isTaken;
    private readonly Joining[] joining;
    private readonly (int Chain, PlaceCandidate Candidate)[] chosen;
    private readonly double[] leftOutCosts;
    private readonly double mostApart;
    private readonly List<PlaceWay> found = new(PlacingCosts.MostWays + 1);
    private PlaceWay? held;
    private double dearest = double.MaxValue;
    private int tries;

    private WayFinder(PlacingLine line, PlaceMoment moment, OnString[] before)
    {
        (notes, chains, chainOf, rules, holds) = (line.Notes, line.Chains, line.ChainOf, line.Rules, line.Holds);
        mostApart = rules.Reach.Most(Finger.Index, Finger.Little);
        (this.moment, this.before) = (moment, before);
        strings = new OnString[before.Length];
        isTaken = new bool[before.Length];
        joining = new Joining[before.Length];
        chosen = new (int, PlaceCandidate)[moment.Fresh.Length];
        leftOutCosts = new double[moment.Fresh.Length];
    }

    /// <summary>The ways, the cheapest first, at most <see cref="PlacingCosts.MostWays"/>.</summary>
    /// <param name="line">The line.</param>
    /// <param name="moment">The moment.</param>
    /// <param name="before">What sounds on each string before it.</param>
    /// <param name="limit">Ways that cost as much are of no use; where there is no limit, there is always one way at least.</param>
    public static List<PlaceWay> Find(PlacingLine line, PlaceMoment moment, OnString[] before, double limit)
    {
        var finder = new WayFinder(line, moment, before) { dearest = limit };
        finder.GoOn();
        for (var i = 0; i < moment.Fresh.Length; i++) finder.leftOutCosts[i] = moment.LeftOutCost(moment.Fresh[i], line.Notes, line.MayLoseNotes);
        finder.Choose(0, 0);
        // What no hand can hold stays together where even leaving notes out would cost more.
        if (finder.held is { } way && (finder.found.Count == 0 || way.Total < finder.found[0].Total)) finder.found.Insert(0, way);
        return finder.found;
    }

    // What sounds, rings or is claimed by its chain; and the notes that go on in their chains.
    private void GoOn()
    {
        Array.Fill(strings, OnString.Nothing);
        for (var number = 1; number < before.Length; number++)
        {
            var on = before[number];
            if (on.Note < 0) continue;
            var note = notes[on.Note];
            var chain = chainOf[on.Note].Chain;
            if (GoesOn(chain) is var next and >= 0)
            {
                isTaken[number] = true;
                strings[number] = new OnString(next, chainOf[next].Step, on.Candidate);
                joining[number] = notes[next].Note.Attack switch
                {
                    Attack.Held => Joining.Held,
                    Attack.HammerOn or Attack.PullOff => Joining.Legato,
                    Attack.Glide or Attack.PickedGlide => Joining.Glide,
                    _ => Joining.None,
                };
                continue;
            }
            isTaken[number] = chains[chain].End > moment.Claims + PlaceMoment.SameTime;
            if (note.End > moment.Claims + PlaceMoment.SameTime) (strings[number], joining[number]) = (on, Joining.Held);
            else if (isTaken[number] || note.End > moment.Start + PlaceMoment.SameTime) strings[number] = on;
            else if (note.RingsUntil > moment.Claims + PlaceMoment.SameTime && !IsLifted(on)) (strings[number], joining[number]) = (on, Joining.Ringing);
        }
    }

    private int GoesOn(int chain)
    {
        foreach (var i in moment.Further)
        {
            if (chainOf[i].Chain == chain) return i;
        }
        return -1;
    }

    // The fingers of a named shape are lifted when another shape comes.
    private bool IsLifted(OnString on) => moment.Shapes.Count > 0 && !on.Place.Fret.IsOpen && (notes[on.Note].Shape is not { } shape || !moment.Shapes.Contains(shape));

    private void Choose(int index, double cost)
    {
        if (cost >= dearest || (tries++ > PlacingCosts.MostTries && (found.Count > 0 || held is not null))) return;
        if (index == moment.Fresh.Length)
        {
            Close(cost);
            return;
        }
        var note = moment.Fresh[index];
        var chain = chainOf[note].Chain;
        foreach (var candidate in chains[chain].Candidates)
        {
            chosen[index] = (chain, candidate);
            if (candidate.IsLeftOut)
            {
                Choose(index + 1, cost + (candidate.Cost > 0 ? candidate.Cost - PlacingCosts.NoteLost + leftOutCosts[index] : 0));
                continue;
            }
            var number = candidate.String;
            if (isTaken[number]) continue;
            var (was, wasJoining) = (strings[number], joining[number]);
            (strings[number], joining[number], isTaken[number]) = (new OnString(note, 0, candidate), Joining.None, true);
            if (IsWithinReach()) Choose(index + 1, cost + candidate.Cost + (wasJoining == Joining.Ringing ? PlacingCosts.RingCut : 0));
            (strings[number], joining[number], isTaken[number]) = (was, wasJoining, false);
        }
    }

    private bool Presses(int number) => strings[number].Note >= 0 && IsPressed(strings[number]) && Sounds(number);

    private bool IsPressed(OnString on) => !on.Place.Fret.IsOpen && !notes[on.Note].Note.IsDead && notes[on.Note].Note.Attack != Attack.Tap;

    // A string may be claimed by a chain whose next note is yet to come.
    private bool Sounds(int number) => joining[number] == Joining.Ringing || notes[strings[number].Note].End > moment.Claims + PlaceMoment.SameTime || notes[strings[number].Note].Start >= moment.Start;

    // Frets further apart than any hand's: no need to look at fingers. What rings may still be let go.
    private bool IsWithinReach()
    {
        var (low, high) = (int.MaxValue, 0);
        for (var number = 1; number < strings.Length; number++)
        {
            if (joining[number] == Joining.Ringing || !Presses(number)) continue;
            low = Math.Min(low, strings[number].Place.Fret.Number);
            high = Math.Max(high, strings[number].Place.Fret.Number);
        }
        return high == 0 || low == high || held is null || rules.Place(high) - rules.Place(low) <= mostApart;
    }

    private void Close(double cost)
    {
        var hold = HoldNow();
        if (hold.Ways.Length > 0 || hold.IsEmpty)
        {
            if (cost + hold.Least < dearest) Keep(hold, cost);
            return;
        }
        var (now, links) = (strings.ToArray(), joining.ToArray());
        // What only rings on gives way where no hand could keep it: the oldest first.
        while (!hold.IsEmpty && hold.Ways.Length == 0 && Oldest() is var oldest and > 0)
        {
            cost += HandCosts.RingingNoteLost;
            (strings[oldest], joining[oldest]) = (OnString.Nothing, Joining.None);
            hold = HoldNow();
        }
        if (hold.IsEmpty || hold.Ways.Length > 0)
        {
            if (cost + hold.Least < dearest) Keep(hold, cost);
        }
        else if (held is null || cost + PlacingCosts.NotHeld < held.Total) held = Way(hold, cost + PlacingCosts.NotHeld);
        now.CopyTo(strings, 0);
        links.CopyTo(joining, 0);
    }

    private void Keep(HeldWays ways, double cost)
    {
        var way = Way(ways, cost);
        var at = found.Count;
        while (at > 0 && found[at - 1].Total > way.Total) at--;
        found.Insert(at, way);
        if (found.Count > PlacingCosts.MostWays) found.RemoveAt(found.Count - 1);
        if (found.Count == PlacingCosts.MostWays) dearest = Math.Min(dearest, found[^1].Total);
    }

    private PlaceWay Way(HeldWays ways, double cost)
    {
        var links = ways.Presses.Length == 0 ? [] : new (Joining, int)[ways.Presses.Length];
        var leftAt = 0.0;
        for (var i = 0; i < links.Length; i++)
        {
            var number = ways.Presses[i].String;
            links[i] = (joining[number], number);
            leftAt = Math.Max(leftAt, notes[strings[number].Note].End);
        }
        return new PlaceWay
        {
            Chosen = [.. chosen],
            Cost = cost,
            Total = cost + ways.Least,
            Strings = [.. strings],
            Links = links,
            Grips = ways.Ways,
            IsHeldByNoHand = ways.Ways.Length == 0 && !ways.IsEmpty,
            LeftAt = leftAt,
            Picked = Picked(),
        };
    }

    // The lowest string that is struck anew; 0 where none is.
    private int Picked()
    {
        var lowest = 0;
        foreach (var (_, candidate) in chosen) lowest = Math.Max(lowest, candidate.String);
        return lowest;
    }

    private int Oldest()
    {
        var oldest = 0;
        for (var number = 1; number < strings.Length; number++)
        {
            if (joining[number] != Joining.Ringing || !IsPressed(strings[number])) continue;
            if (oldest == 0 || notes[strings[number].Note].Start < notes[strings[oldest].Note].Start) oldest = number;
        }
        return oldest;
    }

    private HeldWays HoldNow()
    {
        Span<Press> presses = stackalloc Press[strings.Length];
        var (count, open) = (0, 0);
        for (var number = strings.Length - 1; number > 0; number--)
        {
            var on = strings[number];
            if (on.Note < 0 || !Sounds(number)) continue;
            var note = notes[on.Note];
            var place = on.Place;
            if (Presses(number))
            {
                presses[count++] = new Press(number, place.Fret.Number, FingerOf(note, number), note.Note.Bend?.PeakCents ?? 0, place.Harmonic is { Kind: HarmonicKind.Natural });
            }
            else if (place.Fret.IsOpen && !note.Note.IsDead && joining[number] != Joining.Ringing) open |= 1 << number;
        }
        return holds.Of(presses[..count], open);
    }

    // A finger from the sheet goes along its own string; on another one it says nothing.
    private static Finger? FingerOf(OpenNote open, int number) => open.Home is null || open.Home.Value.Value == number ? open.Note.Finger : null;
}
