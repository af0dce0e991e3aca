using Fretlore.Music;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Search;

namespace Fretlore.RoadMaps.Takes;

/// <summary>Draws a solo phrase by phrase, so that answers can be like their questions, and each phrase lands as its kind does.</summary>
internal sealed class PhraseSampler(SoloStretch stretch, Skeleton skeleton, Lattice lattice, PhraseModel model, Dice dice)
{
    private readonly Slot[] slots = lattice.Slots;
    private readonly int[] chosen = new int[lattice.Slots.Length];
    private readonly int[] arrived = new int[lattice.Slots.Length];

    /// <summary>A place for each slot; null when no line goes on, which a pruned lattice does not let happen.</summary>
    public PlaceNode[]? Draw()
    {
        var sampler = new LineSampler(lattice);
        var spans = skeleton.Phrases.Select(SpanOf).ToArray();
        for (var p = 0; p < spans.Length; p++)
        {
            var (first, last) = spans[p];
            if (first > last) continue;
            if (!sampler.Draw(dice, first, last, chosen, arrived, CostsOf(p, spans))) return null;
        }
        return [.. slots.Select((s, i) => s.Nodes[chosen[i]])];
    }

    private (int First, int Last) SpanOf(PlannedPhrase phrase)
    {
        var first = Array.FindIndex(slots, s => s.Bar.Number >= phrase.First);
        var last = Array.FindLastIndex(slots, s => s.Bar.Number <= phrase.Last);
        return (first < 0 ? slots.Length : first, last);
    }

    private Func<int, int, double>? CostsOf(int phrase, (int First, int Last)[] spans)
    {
        var plan = skeleton.Phrases[phrase];
        if (plan.Landing is null) return null;
        var (first, last) = spans[phrase];
        var echoes = plan.Echoes >= 0 ? Echoes(plan, spans[plan.Echoes]) : null;
        return (slot, node) =>
        {
            var bits = 0.0;
            if (slot == last) bits += LandingCost(plan, slots[slot], slots[slot].Nodes[node]);
            // The end of an answer is its own.
            if (echoes is not null && slot < last - (last - first) / 4 && echoes.TryGetValue(slot, out var height))
            {
                bits += Math.Min(model.OtherThanEchoed, Math.Abs(slots[slot].Nodes[node].Height - height) * model.OtherThanEchoed);
            }
            return bits;
        };
    }

    /// <summary>For each slot of an answer the height that the question has in its place, moved by steps of the scale for a sequence.</summary>
    private Dictionary<int, int> Echoes(PlannedPhrase plan, (int First, int Last) question)
    {
        var heights = new Dictionary<int, int>();
        var firstBar = skeleton.Phrases[plan.Echoes].First;
        for (var i = question.First; i <= question.Last; i++)
        {
            var bar = plan.First + slots[i].Bar.Number - firstBar;
            var at = Array.FindIndex(slots, s => s.Bar.Number == bar && s.At == slots[i].At);
            if (at >= 0) heights[at] = Moved(slots[i].Nodes[chosen[i]].Height, plan.Shift, slots[at].Bar.ScaleTones);
        }
        return heights;
    }

    private static int Moved(int height, int steps, PitchClassSet? scale)
    {
        var way = Math.Sign(steps);
        for (var left = Math.Abs(steps); left > 0; left--)
        {
            do height += way;
            while (scale is { IsEmpty: false } tones && !tones.Contains(NoteName.Wrap(height, 12)));
        }
        return height;
    }

    private double LandingCost(PlannedPhrase plan, Slot slot, PlaceNode node)
    {
        var costs = plan.Kind == PhraseKind.Answer || plan.Last == stretch.Count ? model.AnswerLandings : model.QuestionLandings;
        if (slot.Bar.ChordAt(slot.At) is { } chord)
        {
            var above = NoteName.Wrap(node.Final - chord.Root.PitchClass, 12);
            return above switch { 0 => costs[0], 3 or 4 => costs[1], 7 => costs[2], _ => costs[3] };
        }
        if (slot.Bar.Scale is not { } scale) return 0;
        var degree = NoteName.Wrap(node.Final - scale.Tonic.PitchClass, 12);
        return degree switch { 0 => costs[0], 3 or 4 => costs[1], 7 => costs[2], _ => costs[3] };
    }
}
