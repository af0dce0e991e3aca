using System.Runtime.InteropServices;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;

namespace Fretlore.Hands.Placing;

/// <summary>The cheapest ways through the moments so far.</summary>
internal sealed class PlacingSearch
{
    private const int FarthestCrossing = 3;
    private const int HighestLowPosition = 4;

    private readonly PlacingLine line;

    // The cheapest steps of a moment, the dearest of them on top.
    private readonly PriorityQueue<Step, double> cheapest = new();
    private List<PlacePath> paths;

    public PlacingSearch(PlacingLine line, int strings)
    {
        this.line = line;
        var nothing = new OnString[strings + 1];
        Array.Fill(nothing, OnString.Nothing);
        paths = [new PlacePath { Before = null, Grip = null, Cost = 0, Strings = nothing, Chosen = [], LastStart = 0, LeftAt = double.MinValue, Picked = 0 }];
    }

    private readonly record struct Step(double Cost, PlacePath From, PlaceWay Way, Grip? Grip);

    // From here on a step is of no use.
    private double Limit => cheapest.Count < PlacingCosts.MostPaths || !cheapest.TryPeek(out _, out var dearest) ? double.MaxValue : -dearest;

    public void Add(PlaceMoment moment)
    {
        cheapest.Clear();
        // Paths come cheapest first, and so do the groups.
        var groups = new Dictionary<string, List<PlacePath>>(StringComparer.Ordinal);
        foreach (var path in paths)
        {
            ref var group = ref CollectionsMarshal.GetValueRefOrAddDefault(groups, SoundsOn(path, moment), out _);
            (group ??= []).Add(path);
        }
        foreach (var group in groups.Values)
        {
            var least = group[0].Cost;
            if (least >= Limit) continue;
            foreach (var way in WayFinder.Find(line, moment, group[0].Strings, Limit - least))
            {
                if (least + way.Total < Limit) AddSteps(group, way, moment);
            }
        }
        var steps = cheapest.UnorderedItems.Select(item => item.Element).OrderBy(step => step.Cost).ToList();
        paths = steps.ConvertAll(step => Taken(step, moment));
    }

    /// <summary>What the cheapest way of all chose, the last chain first.</summary>
    public IEnumerable<(int Chain, PlaceCandidate Candidate)> Chosen()
    {
        for (var path = paths[0]; path is not null; path = path.Before)
        {
            foreach (var choice in path.Chosen) yield return choice;
        }
    }

    private void AddSteps(List<PlacePath> from, PlaceWay way, PlaceMoment moment)
    {
        if (way.Grips.Length == 0)
        {
            // The hand stays as it was where there is nothing to hold.
            foreach (var path in from) Add(new Step(path.Cost + way.Cost + Crossing(path, way), path, way, way.IsHeldByNoHand ? null : path.Grip));
            return;
        }
        Span<PressLink> links = stackalloc PressLink[way.Links.Length];
        foreach (var grip in way.Grips)
        {
            var more = way.Cost + grip.Cost + OpenStrings(way, grip);
            var (best, least) = (default(PlacePath), Limit - more);
            foreach (var path in from)
            {
                if (path.Cost >= least) break;
                var cost = path.Cost + Crossing(path, way);
                if (path.Grip is { } before && cost < least)
                {
                    for (var i = 0; i < links.Length; i++) links[i] = Link(way.Links[i], before);
                    cost += MoveCost.Of(before, grip, links, TimeToMove(path, moment.Start), line.Rules, []);
                }
                if (cost < least) (best, least) = (path, cost);
            }
            if (best is not null) Add(new Step(least + more, best, way, grip));
        }
    }

    private void Add(Step step)
    {
        if (cheapest.Count < PlacingCosts.MostPaths) cheapest.Enqueue(step, -step.Cost);
        else if (step.Cost < Limit) cheapest.EnqueueDequeue(step, -step.Cost);
    }

    // The picking hand likes to stay where it is.
    private static double Crossing(PlacePath path, PlaceWay way) => path.Picked == 0 || way.Picked == 0
        ? 0
        : PlacingCosts.StringCrossed * Math.Min(FarthestCrossing, Math.Abs(path.Picked - way.Picked));

    // Open strings sound out of place among notes high up the neck, unless they are meant.
    private double OpenStrings(PlaceWay way, Grip grip)
    {
        if (grip.Position <= HighestLowPosition) return 0;
        var cost = 0.0;
        foreach (var (chain, candidate) in way.Chosen)
        {
            if (candidate.IsLeftOut || !candidate.Places[0].Fret.IsOpen || line.Notes[line.Chains[chain].Notes[0]].WasOpen) continue;
            cost += PlacingCosts.OpenStringPerFret * (grip.Position - HighestLowPosition);
        }
        return cost;
    }

    private static PressLink Link((Joining Kind, int String) link, Grip before)
    {
        if (link.Kind == Joining.None) return PressLink.None;
        var presses = before.Hold.Presses;
        for (var i = 0; i < presses.Length; i++)
        {
            if (presses[i].String == link.String) return new PressLink(link.Kind, i);
        }
        return PressLink.None;
    }

    private static double TimeToMove(PlacePath path, double now)
    {
        var left = Math.Min(now, path.LeftAt);
        return Math.Max(HandCosts.LeastTime, now - left + HandCosts.LentShare * (left - path.LastStart));
    }

    private static PlacePath Taken(Step step, PlaceMoment moment)
    {
        var holds = step.Way.Grips.Length > 0;
        return new PlacePath
        {
            Before = step.From,
            Grip = step.Grip,
            Cost = step.Cost,
            Strings = step.Way.Strings,
            Chosen = step.Way.Chosen,
            LastStart = holds ? moment.Start : step.From.LastStart,
            LeftAt = holds ? step.Way.LeftAt : step.From.LeftAt,
            Picked = step.Way.Picked > 0 ? step.Way.Picked : step.From.Picked,
        };
    }

    // Two paths on which the same sounds on in the same places have the same ways before them.
    private string SoundsOn(PlacePath path, PlaceMoment moment)
    {
        Span<char> text = stackalloc char[2 * path.Strings.Length];
        text.Clear();
        for (var number = 1; number < path.Strings.Length; number++)
        {
            var on = path.Strings[number];
            if (on.Note < 0 || !Matters(on.Note, moment)) continue;
            text[2 * number] = (char)(on.Note & 0xFFFF);
            text[2 * number + 1] = (char)(1 + (on.Note >> 16) * 128 + on.Place.Fret.Number);
        }
        return new string(text);
    }

    private bool Matters(int note, PlaceMoment moment) =>
        line.Notes[note].RingsUntil > moment.Start + PlaceMoment.SameTime || line.Chains[line.ChainOf[note].Chain].End > moment.Start + PlaceMoment.SameTime
        || line.Chains[line.ChainOf[note].Chain].Notes[^1] != note;
}
