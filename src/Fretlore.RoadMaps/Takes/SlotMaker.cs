using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Search;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>Turns a plan with its rhythm into slots: fixed phrases and licks as they stand, free notes with every place the rules leave them.</summary>
internal sealed class SlotMaker(SoloStretch stretch, Skeleton skeleton, PlaceFinder finder, HeightPlan heights, PhraseModel model, double bendBits, IReadOnlyList<FretWindow?> hands)
{
    /// <summary>All moments of the solo; null when some note has no place.</summary>
    public Slot[]? Make(ImmutableArray<RhythmNote>[] rhythm)
    {
        var slots = new List<Slot>();
        foreach (var phrase in skeleton.Phrases)
        {
            if (phrase.Kind == PhraseKind.Fixed) AddFixed(phrase, slots);
            else if (phrase.Lick is { } lick) AddLick(lick, slots);
            else
            {
                for (var bar = phrase.First; bar <= phrase.Last; bar++)
                {
                    foreach (var note in rhythm[bar - 1]) slots.Add(Empty(stretch.Bars[bar - 1], note.At, note.Length, note.Tuplet));
                }
            }
        }
        for (var i = 0; i < slots.Count; i++) slots[i].FollowsRest = i == 0 || slots[i - 1].End < slots[i].Start;
        for (var i = 0; i < slots.Count; i++)
        {
            if (slots[i].Given is null) Fill(slots, i);
            if (slots[i].Nodes.Length == 0) return null;
        }
        return [.. slots];
    }

    private void AddFixed(PlannedPhrase phrase, List<Slot> slots)
    {
        var bars = Enumerable.Range(phrase.First, phrase.Last - phrase.First + 1).Select(b => stretch.Bars[b - 1]).ToList();
        var moments = SoloLine.Of([.. bars.Select(b => b.Fixed!)], [.. bars.Select(b => b.Length)]);
        foreach (var moment in moments) slots.Add(Given(moment, phrase.First));
    }

    private void AddLick(PlannedLick lick, List<Slot> slots)
    {
        var moments = LickFinder.MomentsOf(lick.Riff);
        for (var i = 0; i < moments.Length; i++)
        {
            if (i < lick.Kept) slots.Add(Given(moments[i], lick.First));
            else if (!lick.EndsEarly) slots.Add(Empty(stretch.Bars[lick.First + moments[i].Bar - 2], moments[i].At, moments[i].Length, TupletAt(lick.Riff, moments[i])));
        }
    }

    private static Tuplet? TupletAt(Riff riff, LineMoment moment) =>
        riff.Content[moment.Bar - 1].Strands[0].Events.Items.FirstOrDefault(e => e.Start == moment.At)?.Tuplet;

    private Slot Given(LineMoment moment, int first)
    {
        var top = moment.Top;
        return new Slot
        {
            Bar = stretch.Bars[first + moment.Bar - 2],
            At = moment.At,
            Length = moment.Length,
            Given = moment,
            Nodes = [new PlaceNode(top.String.Value, top.Fret.Number, moment.Arrival - top.Sounding.Midi, moment.Arrival, moment.Final)],
            Costs = [0],
        };
    }

    private static Slot Empty(StretchBar bar, Beats at, Beats length, Tuplet? tuplet) => new() { Bar = bar, At = at, Length = length, Tuplet = tuplet, Nodes = [], Costs = [] };

    private void Fill(List<Slot> slots, int index)
    {
        var slot = slots[index];
        var hand = hands[slot.Bar.Number - 1];
        var target = skeleton.TargetsIn(slot.Bar.Number).FirstOrDefault(t => t.At == slot.At);
        IEnumerable<PlaceNode> nodes;
        if (target is not null)
        {
            nodes = target.Wanted.Select(w => (IEnumerable<PlaceNode>)finder.Target(slot.Bar, slot.At, w.Target, w.How, w.String, hand)).Aggregate((a, b) => a.Intersect(b));
            slot.Ways.AddRange(target.Wanted.Select(w => w.How).OfType<Approach>().Distinct());
        }
        else
        {
            var mayBend = slot.Seconds >= model.BendSeconds && !slot.Bar.Forbids<Avoided.Bends>();
            nodes = finder.At(slot.Bar, slot.At, mayBend, hand);
            if (index + 1 < slots.Count && slots[index + 1] is { Given: null, FollowsRest: false } next
                && skeleton.TargetsIn(next.Bar.Number).FirstOrDefault(t => t.At == next.At) is { } coming)
            {
                foreach (var (wanted, how, _) in coming.Wanted)
                {
                    if (how is not null && StepRules.AsksForNoteBefore(how)) nodes = nodes.Concat(finder.Before(slot.Bar, slot.At, wanted, how, hand)).Distinct();
                }
            }
        }
        slot.Nodes = [.. nodes];
        slot.Costs = [.. slot.Nodes.Select(n => Cost(slot, n, target is not null))];
    }

    private double Cost(Slot slot, PlaceNode node, bool isTarget)
    {
        var bits = model.OffHeight * Math.Abs(node.Height - heights.At(slot.Start));
        if (isTarget) return bits;
        if (slot.Bar.ChordAt(slot.At) is { } chord && !chord.Contains(node.Height)) bits += slot.Bar.IsStrong(slot.At) ? model.StrongOutsideChord : model.WeakOutsideChord;
        return bits + (node.Bend > 0 ? bendBits : 0);
    }
}
