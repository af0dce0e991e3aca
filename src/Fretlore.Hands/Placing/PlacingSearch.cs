using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;

namespace Fretlore.Hands.Placing;

/// <summary>The cheapest ways through the moments so far.</summary>
internal sealed class PlacingSearch
{
    private readonly PlacingLine line;
    private List<PlacePath> paths;

    public PlacingSearch(PlacingLine line, int strings)
    {
        this.line = line;
        var nothing = new OnString[strings + 1];
        Array.Fill(nothing, OnString.Nothing);
        paths = [new PlacePath { Before = null, Grip = null, Cost = 0, Strings = nothing, Chosen = [], LastStart = 0, LeftAt = double.MinValue }];
    }

    private readonly record struct Step(double Cost, PlacePath From, PlaceWay Way, Grip? Grip);

    public void Add(PlaceMoment moment)
    {
        var steps = new List<Step>();
        foreach (var same in paths.GroupBy(path => SoundsOn(path, moment)))
        {
            var ways = WayFinder.Find(line, moment, same.First().Strings);
            var list = same.OrderBy(path => path.Cost).ToList();
            foreach (var way in ways) AddSteps(list, way, moment, steps);
        }
        steps.Sort((a, b) => a.Cost.CompareTo(b.Cost));
        paths = [.. steps.Take(PlacingCosts.MostPaths).Select(step => Taken(step, moment))];
    }

    /// <summary>What the cheapest way of all chose, the last chain first.</summary>
    public IEnumerable<(int Chain, PlaceCandidate Candidate)> Chosen()
    {
        for (var path = paths[0]; path is not null; path = path.Before)
        {
            foreach (var choice in path.Chosen) yield return choice;
        }
    }

    private void AddSteps(List<PlacePath> from, PlaceWay way, PlaceMoment moment, List<Step> steps)
    {
        if (way.Grips.Length == 0)
        {
            // The hand stays as it was where there is nothing to hold.
            foreach (var path in from) steps.Add(new Step(path.Cost + way.Cost, path, way, way.IsHeldByNoHand ? null : path.Grip));
            return;
        }
        Span<PressLink> links = stackalloc PressLink[way.Links.Length];
        foreach (var grip in way.Grips)
        {
            var (best, cheapest) = (default(PlacePath), double.MaxValue);
            foreach (var path in from)
            {
                if (path.Cost >= cheapest) break;
                var cost = path.Cost;
                if (path.Grip is { } before)
                {
                    for (var i = 0; i < links.Length; i++) links[i] = Link(way.Links[i], before);
                    cost += MoveCost.Of(before, grip, links, TimeToMove(path, moment.Start), line.Rules, []);
                }
                if (cost < cheapest) (best, cheapest) = (path, cost);
            }
            if (best is not null) steps.Add(new Step(cheapest + way.Cost + grip.Cost + OpenStrings(way, grip), best, way, grip));
        }
    }

    // Open strings sound out of place among notes high up the neck, unless they are meant.
    private double OpenStrings(PlaceWay way, Grip grip)
    {
        if (grip.Position <= 4) return 0;
        var cost = 0.0;
        foreach (var (chain, candidate) in way.Chosen)
        {
            if (candidate.IsLeftOut || !candidate.Places[0].Fret.IsOpen || line.Notes[line.Chains[chain].Notes[0]].WasOpen) continue;
            cost += PlacingCosts.OpenStringPerFret * (grip.Position - 4);
        }
        return cost;
    }

    private static PressLink Link((Joining Kind, int String) link, Grip before)
    {
        if (link.Kind == Joining.None) return PressLink.None;
        for (var i = 0; i < before.Hold.Presses.Length; i++)
        {
            if (before.Hold.Presses[i].String == link.String) return new PressLink(link.Kind, i);
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
