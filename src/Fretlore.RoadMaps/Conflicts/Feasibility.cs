using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Search;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Takes;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Conflicts;

/// <summary>Whether any solo at all keeps every rule of a road map, with at least one note in each free bar.</summary>
/// <remarks>
/// Exact: all beginnings that keep the rules are carried through the bars together, cell by cell and note by note, and only what matters for what comes is told
/// apart. What a hand can do is not asked here.
/// </remarks>
internal sealed class Feasibility
{
    private static readonly SongHabits NoHabits = new() { Intervals = [], Cells = [], Notes = 0 };
    private static readonly PhraseModel Model = new();

    private readonly SoloStretch stretch;
    private readonly PlaceFinder finder;
    private readonly NodeTable table = new();
    private readonly StateTable states = new();
    private readonly ImmutableArray<Wanted> wanted;
    private readonly ImmutableArray<ContourRule> contours;
    private readonly ImmutableArray<(LickRule Rule, Riff Riff, int First)> licks;

    private Feasibility(SoloStretch stretch)
    {
        this.stretch = stretch;
        finder = new PlaceFinder(stretch.Part.Neck);
        wanted = [.. stretch.Map.Rules.Select(Wanted.Of).OfType<Wanted>()];
        contours = [.. stretch.Map.RulesOf<ContourRule>()];
        licks = LickPlaces.In(stretch);
    }

    public static bool IsPossible(SoloStretch stretch) => new Feasibility(stretch).IsPossible();

    private bool IsPossible()
    {
        if (wanted.Length > 24 || !FixedBarsHit()) return false;
        var fronts = Enumerable.Range(0, stretch.Count + 1).Select(_ => new Front()).ToArray();
        fronts[0].Add(new Standing(HitByFixed(), -1, true, false, false, false, states.NumberOf(contours.Select(_ => (ContourState?)null).ToValueList())), NodeSet.Of(table.Nothing));
        for (var bar = 1; bar <= stretch.Count; bar++)
        {
            var facts = stretch.Bars[bar - 1];
            if (facts.Fixed is not null) fronts[bar].Add(EndBar(Written([facts.Fixed], bar, fronts[bar - 1]), bar));
            else
            {
                fronts[bar].Add(EndBar(Free(facts, fronts[bar - 1]), bar));
                foreach (var (_, riff, _) in licks.Where(l => l.First == bar))
                {
                    var front = fronts[bar - 1];
                    for (var i = 0; i < riff.Bars.Count; i++) front = EndBar(Written([riff.Content[i]], bar + i, front), bar + i);
                    fronts[bar + riff.Bars.Count - 1].Add(front);
                }
            }
        }
        var needsEnd = stretch.Map.RulesOf<EndRule>().Any() && stretch.Bars[^1].IsFree;
        var all = 0;
        for (var w = 0; w < wanted.Length; w++)
        {
            if (wanted[w].Rule is AimRule { Bars: null }) all |= 1 << w;
        }
        return fronts[^1].All.Any(f => (f.Key.Hit & all) == all && (!needsEnd || f.Key.HasEnded) && f.Key.Owed < 0);
    }

    private RoadMapCheck CheckOfFixed() => RoadMapChecker.Check(stretch, [.. stretch.Bars.Select(b => b.Fixed ?? new PartBar(stretch.Part.Neck, []))]);

    // Aims in fixed bars, and an end in one, are hit by the phrase or not at all.
    private bool FixedBarsHit()
    {
        if (stretch.Bars.All(b => b.IsFree)) return true;
        var check = CheckOfFixed();
        foreach (var outcome in check.Rules)
        {
            if (outcome.Rule is AimRule { Bars: not null } && outcome.Breaks.Any(b => stretch.Bars[b.Bar - 1].Fixed is not null)) return false;
            if (outcome.Rule is EndRule && stretch.Bars[^1].Fixed is not null && !outcome.IsKept) return false;
        }
        return true;
    }

    private int HitByFixed()
    {
        if (stretch.Bars.All(b => b.IsFree)) return 0;
        var hits = CheckOfFixed().Aims.Select(a => a.Aim).ToList();
        var bits = 0;
        for (var w = 0; w < wanted.Length; w++)
        {
            if (wanted[w].Rule is AimRule { Bars: null } && hits.Contains(wanted[w].Rule)) bits |= 1 << w;
        }
        return bits;
    }

    /// <summary>What stands at a bar's end: its targets hit, its contours ended where they end.</summary>
    private Front EndBar(Front front, int bar)
    {
        var due = 0;
        var own = 0;
        for (var w = 0; w < wanted.Length; w++)
        {
            if (wanted[w].Rule is not AimRule { Bars: { } bars }) continue;
            own |= 1 << w;
            if (stretch.Bars[bar - 1].IsFree && bars.Contains(bar, stretch.Count)) due |= 1 << w;
        }
        var ended = new Front();
        foreach (var (standing, nodes) in front.All)
        {
            if ((standing.Hit & due) != due || !standing.HasNote) continue;
            foreach (var (contoursNow, some) in EndContours(standing, nodes, bar)) ended.Add(standing with { Hit = standing.Hit & ~own, HasNote = false, Contours = contoursNow }, some);
        }
        return Best(ended);
    }

    // What is told apart for a contour that only rises or falls, as far as it matters.
    private Front Best(Front front) => contours is [{ Shape: Contour.Rising or Contour.Falling }] ? front.Best(IsBetter) : front;

    // A rising line that has come less high can go wherever one that has come higher can; a falling one the other way round.
    private bool IsBetter(int one, int other)
    {
        if (states[one][0] is not { } a || states[other][0] is not { } b) return false;
        return a.HasMoved == b.HasMoved && (contours[0].Shape == Contour.Rising ? a.Last <= b.Last : a.Last >= b.Last);
    }

    private IEnumerable<(int Contours, NodeSet Nodes)> EndContours(Standing standing, NodeSet nodes, int bar)
    {
        var ending = Enumerable.Range(0, contours.Length).FirstOrDefault(c => LastBarOf(contours[c]) == bar, -1);
        if (ending < 0)
        {
            yield return (standing.Contours, nodes);
            yield break;
        }
        if (standing.IsMark && states[standing.Contours][ending] is { } mark)
        {
            if (mark.IsComplete(contours[ending].Shape)) yield return (standing.Contours, nodes);
            yield break;
        }
        foreach (var node in nodes.Items)
        {
            if (states[standing.Contours][ending] is not { } state) continue;
            if (state.To(table[node].Height, contours[ending].Shape) is { } end && end.IsComplete(contours[ending].Shape)) yield return (standing.Contours, NodeSet.Of(node));
        }
    }

    private int LastBarOf(ContourRule rule) => Enumerable.Range(1, stretch.Count).LastOrDefault(bar => ReferenceEquals(stretch.Map.RuleIn<ContourRule>(bar, stretch.Count), rule));

    /// <summary>A fixed phrase or a lick: its notes as they stand.</summary>
    private Front Written(IReadOnlyList<PartBar> bars, int bar, Front before)
    {
        var facts = stretch.Bars[bar - 1];
        var front = before;
        var at = Beats.Zero;
        foreach (var moment in SoloLine.Of(bars, [facts.Length]))
        {
            var top = moment.Top;
            var node = new PlaceNode(top.String.Value, top.Fret.Number, moment.Arrival - top.Sounding.Midi, moment.Arrival, moment.Final);
            if (moment.At > at) front = Silent(front);
            front = Note(facts, moment.At, front, isWritten: true, table.SetOf([node]));
            at = moment.At + moment.Length;
        }
        return at < facts.Length ? Silent(front) : front;
    }

    private Front Free(StretchBar bar, Front before)
    {
        var pool = RhythmPool.Of(bar, Model, NoHabits, null);
        var fronts = new SortedDictionary<Beats, Front>(Comparer<Beats>.Default) { [Beats.Zero] = before };
        while (fronts.Count > 0)
        {
            var (at, front) = fronts.First();
            fronts.Remove(at);
            if (at == bar.Length) return front;
            front = Best(front);
            // Cells that begin with the same notes are carried through these together.
            var begun = new Dictionary<(Front, Beats), Front>();
            foreach (var form in pool.Forms)
            {
                if (!pool.Fits(at, form, RhythmNeeds.None)) continue;
                var after = Through(bar, at, form, front, begun);
                if (after.IsEmpty) continue;
                if (!fronts.TryGetValue(at + form.Length, out var known)) fronts[at + form.Length] = known = new Front();
                known.Add(after);
            }
        }
        return new Front();
    }

    private Front Through(StretchBar bar, Beats at, CellForm form, Front front, Dictionary<(Front, Beats), Front> begun)
    {
        foreach (var note in form.Notes)
        {
            var key = (front, note.At);
            front = begun.TryGetValue(key, out var known) ? known : begun[key] = Best(Note(bar, at + note.At, front, isWritten: false, default));
            if (front.IsEmpty) return front;
        }
        if (!form.LeavesRest) return front;
        // The end of a cell may be silence, or held where that is not too long.
        var silent = Silent(front);
        if (form.Notes.Length > 0 && MayHold(bar, form)) silent.Add(front);
        return silent;
    }

    private static bool MayHold(StretchBar bar, CellForm form) =>
        bar.Density is not { } density || form.Length - form.Notes[^1].At <= new NoteValue(density.Slowest).Length;

    private static Front Silent(Front front)
    {
        var silent = new Front();
        foreach (var (standing, nodes) in front.All)
        {
            if (standing.Owed < 0) silent.Add(standing with { Rests = true }, nodes);
        }
        return silent;
    }

    private Front Note(StretchBar bar, Beats at, Front before, bool isWritten, NodeSet written)
    {
        var after = new Front();
        var choices = isWritten ? new Choices(written, [], []) : ChoicesAt(bar, at);
        foreach (var (standing, nodes) in before.All)
        {
            if (standing.HasEnded) continue;
            if (standing.Owed < 0) Step(bar, standing, nodes, choices.Plain, standing.Hit, false, -1, [], after);
            foreach (var (hits, places, ways, ends) in choices.Targets)
            {
                if (standing.Owed >= 0 && (hits >> standing.Owed & 1) == 0) continue;
                Step(bar, standing, nodes, places, standing.Hit | hits, ends, -1, ways, after);
            }
            if (standing.Owed >= 0) continue;
            foreach (var (target, places) in choices.OnTheWay) Step(bar, standing, nodes, places, standing.Hit, false, target, [], after);
        }
        return after;
    }

    /// <summary>What a note can be at a time.</summary>
    /// <param name="Plain">By the rules about notes.</param>
    /// <param name="Targets">As a target, or several.</param>
    /// <param name="OnTheWay">As the note before a target, in the scale or not.</param>
    private sealed record Choices(NodeSet Plain, List<(int Hits, NodeSet Places, List<Approach> Ways, bool Ends)> Targets, List<(int Target, NodeSet Places)> OnTheWay);

    private readonly Dictionary<(int Bar, Beats At), Choices> known = [];

    private Choices ChoicesAt(StretchBar bar, Beats at)
    {
        if (known.TryGetValue((bar.Number, at), out var choices)) return choices;
        var plain = table.SetOf(finder.At(bar, at, bends: !bar.Forbids<Avoided.Bends>(), null));
        var onTheWay = new List<(int, NodeSet)>();
        for (var w = 0; w < wanted.Length; w++)
        {
            if (wanted[w].How is { } how && StepRules.AsksForNoteBefore(how) && MayComeSoon(wanted[w].Rule, bar.Number)) onTheWay.Add((w, table.SetOf(finder.Before(bar, at, wanted[w].Target, how, null))));
        }
        return known[(bar.Number, at)] = new Choices(plain, Targets(bar, at), onTheWay);
    }

    // In this bar or the next.
    private bool MayComeSoon(RoadMapRule rule, int bar) => rule.Bars is { } bars
        ? bars.Contains(bar, stretch.Count) || (bar < stretch.Count && bars.Contains(bar + 1, stretch.Count))
        : rule is not EndRule || bar >= stretch.Count - 1;

    /// <summary>Targets that a note here can be: each alone, and all of the same note together.</summary>
    private List<(int Hits, NodeSet Places, List<Approach> Ways, bool Ends)> Targets(StretchBar bar, Beats at)
    {
        var here = Enumerable.Range(0, wanted.Length).Where(w => wanted[w].Rule switch
        {
            AimRule aim => (aim.Bars is null || aim.Bars.Contains(bar.Number, stretch.Count))
                && (aim.Beat is { } beat ? beat <= bar.BeatStarts.Count && bar.BeatStarts[beat - 1] == at : bar.IsStrong(at)),
            _ => true,
        }).ToList();
        var groups = here.Select(w => new List<int> { w }).ToList();
        groups.AddRange(here.GroupBy(w => wanted[w].Target.PitchClass).Where(g => g.Count() > 1).Select(g => g.ToList()));
        return [.. groups.Select(group =>
        {
            var places = group.Select(w => (IEnumerable<PlaceNode>)finder.Target(bar, at, wanted[w].Target, wanted[w].How, wanted[w].String, null)).Aggregate((a, b) => a.Intersect(b));
            return (group.Aggregate(0, (bits, w) => bits | 1 << w), table.SetOf(places), group.Select(w => wanted[w].How).OfType<Approach>().ToList(), group.Exists(w => wanted[w].Rule is EndRule));
        })];
    }

    private void Step(StretchBar bar, Standing standing, NodeSet nodes, NodeSet places, int hit, bool ends, int owed, List<Approach> ways, Front after)
    {
        if (places.IsEmpty) return;
        var reached = new NodeSet();
        if (standing.Rests)
        {
            if (ways.Exists(StepRules.AsksForNoteBefore)) return;
            reached = places;
        }
        else
        {
            var following = bar.IsFree ? table.After(bar) : null;
            if (following is null && ways.Count == 0) reached = places;
            else foreach (var from in nodes.Items)
            {
                var next = following is null ? places : places & following[from];
                if (ways.Count > 0) next = ways.Aggregate(next, (set, way) => Led(way, from, set));
                reached |= next;
            }
        }
        if (reached.IsEmpty) return;
        var made = standing with { Hit = hit, Owed = owed, Rests = false, HasNote = true, HasEnded = ends, IsMark = false };
        var contour = contours.IsEmpty ? -1 : Enumerable.Range(0, contours.Length).FirstOrDefault(c => ReferenceEquals(stretch.Map.RuleIn<ContourRule>(bar.Number, stretch.Count), contours[c]), -1);
        if (contour < 0 || standing.HasNote)
        {
            after.Add(made, reached);
            return;
        }
        foreach (var (height, alike) in table.ByHeight)
        {
            var there = reached & alike;
            if (there.IsEmpty || states.After(standing.Contours, contour, contours[contour].Shape, height) is not { } now) continue;
            after.Add(made with { IsMark = true, Contours = now }, there);
        }
    }

    private NodeSet Led(Approach way, int from, NodeSet places)
    {
        if (!StepRules.AsksForNoteBefore(way)) return places;
        var led = new NodeSet();
        foreach (var node in places.Items)
        {
            if (StepRules.Leads(way, table[from], table[node])) led |= NodeSet.Of(node);
        }
        return led;
    }
}
