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
    private readonly GripTable grips;
    private readonly PlaceMoment moment;
    private readonly OnString[] before;
    private readonly OnString[] strings;
    private readonly bool[] isTaken;
    private readonly Joining[] joining;
    private readonly (int Chain, PlaceCandidate Candidate)[] chosen;
    private readonly double[] leftOutCosts;
    private readonly List<PlaceWay> found = [];
    private PlaceWay? held;
    private double dearest = double.MaxValue;

    private WayFinder(PlacingLine line, PlaceMoment moment, OnString[] before)
    {
        (notes, chains, chainOf, rules, grips) = (line.Notes, line.Chains, line.ChainOf, line.Rules, line.Grips);
        (this.moment, this.before) = (moment, before);
        strings = new OnString[before.Length];
        isTaken = new bool[before.Length];
        joining = new Joining[before.Length];
        chosen = new (int, PlaceCandidate)[moment.Fresh.Length];
        leftOutCosts = new double[moment.Fresh.Length];
    }

    /// <summary>The ways, the cheapest first, at most <see cref="PlacingCosts.MostWays"/>; always at least one.</summary>
    public static List<PlaceWay> Find(PlacingLine line, PlaceMoment moment, OnString[] before)
    {
        var finder = new WayFinder(line, moment, before);
        finder.GoOn();
        for (var i = 0; i < moment.Fresh.Length; i++)
        {
            finder.leftOutCosts[i] = line.MayLoseNotes ? moment.LeftOutCost(moment.Fresh[i], line.Notes) : PlacingCosts.NoteLost;
        }
        finder.Choose(0, 0);
        // What no hand can hold stays together where even leaving notes out would cost more.
        if (finder.held is { } way && (finder.found.Count == 0 || way.Cost < finder.found[0].Cost)) finder.found.Insert(0, way);
        return finder.found;
    }

    // What sounds, rings or is claimed by its chain; and the notes that go on in their chains.
    private void GoOn()
    {
        Array.Fill(strings, OnString.Nothing);
        var shapes = moment.Fresh.Concat(moment.Further).Select(i => notes[i].Shape).Where(shape => shape is not null).ToList();
        for (var number = 1; number < before.Length; number++)
        {
            var on = before[number];
            if (on.Note < 0) continue;
            var note = notes[on.Note];
            var chain = chainOf[on.Note].Chain;
            if (moment.Further.FirstOrDefault(i => chainOf[i].Chain == chain, -1) is var next and >= 0)
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
            else if (note.RingsUntil > moment.Claims + PlaceMoment.SameTime && !IsLifted(on, shapes)) (strings[number], joining[number]) = (on, Joining.Ringing);
        }
    }

    // The fingers of a named shape are lifted when another shape comes.
    private bool IsLifted(OnString on, List<string?> shapes) => shapes.Count > 0 && !on.Place.Fret.IsOpen && !shapes.Contains(notes[on.Note].Shape);

    private void Choose(int index, double cost)
    {
        if (cost >= dearest) return;
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
        return high == 0 || low == high || held is null || rules.Place(high) - rules.Place(low) <= rules.Reach.Most(Finger.Index, Finger.Little);
    }

    private void Close(double cost)
    {
        var (now, links) = (strings.ToArray(), joining.ToArray());
        var hold = HoldNow();
        var ways = hold.Presses.Length == 0 ? [] : grips.Of(hold);
        // What only rings on gives way where no hand could keep it: the oldest first.
        while (hold.Presses.Length > 0 && ways.Length == 0 && Oldest() is var oldest and > 0)
        {
            cost += HandCosts.RingingNoteLost;
            (strings[oldest], joining[oldest]) = (OnString.Nothing, Joining.None);
            hold = HoldNow();
            ways = hold.Presses.Length == 0 ? [] : grips.Of(hold);
        }
        var isHeldByNoHand = hold.Presses.Length > 0 && ways.Length == 0;
        if (isHeldByNoHand) cost += PlacingCosts.NotHeld;
        var total = cost + (ways.Length == 0 ? 0 : ways.Min(grip => grip.Cost));
        if (isHeldByNoHand ? held is null || total < held.Cost : total < dearest) Keep(hold, ways, cost, total, isHeldByNoHand);
        now.CopyTo(strings, 0);
        links.CopyTo(joining, 0);
    }

    private void Keep(Hold hold, Grip[] ways, double cost, double total, bool isHeldByNoHand)
    {
        var way = new PlaceWay
        {
            Chosen = [.. chosen],
            Cost = cost,
            Strings = [.. strings],
            Links = [.. hold.Presses.Select(press => (joining[press.String], press.String))],
            Grips = ways,
            IsHeldByNoHand = isHeldByNoHand,
            LeftAt = hold.Presses.Length == 0 ? 0 : hold.Presses.Max(press => notes[strings[press.String].Note].End),
        };
        if (isHeldByNoHand)
        {
            held = way;
            return;
        }
        var at = found.FindIndex(other => Total(other) > total);
        found.Insert(at < 0 ? found.Count : at, way);
        if (found.Count > PlacingCosts.MostWays) found.RemoveAt(found.Count - 1);
        if (found.Count == PlacingCosts.MostWays) dearest = Total(found[^1]);
    }

    private static double Total(PlaceWay way) => way.Cost + (way.Grips.Length == 0 ? 0 : way.Grips.Min(grip => grip.Cost));

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

    private Hold HoldNow()
    {
        var presses = new List<Press>();
        var open = 0;
        for (var number = strings.Length - 1; number > 0; number--)
        {
            var on = strings[number];
            if (on.Note < 0 || !Sounds(number)) continue;
            var note = notes[on.Note];
            if (Presses(number))
            {
                presses.Add(new Press(number, on.Place.Fret.Number, FingerOf(note, number), note.Note.Bend?.PeakCents ?? 0, on.Place.Harmonic is { Kind: HarmonicKind.Natural }));
            }
            else if (on.Place.Fret.IsOpen && !note.Note.IsDead && joining[number] != Joining.Ringing) open |= 1 << number;
        }
        return new Hold([.. presses], open);
    }

    // A finger from the sheet goes along its own string; on another one it says nothing.
    private static Finger? FingerOf(OpenNote open, int number) => open.Home is null || open.Home.Value.Value == number ? open.Note.Finger : null;
}
