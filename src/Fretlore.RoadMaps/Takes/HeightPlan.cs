using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Model;
using Fretlore.RoadMaps.Search;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>How high a solo should be at each time: every phrase has its arch, and the whole rises to a climax, within what strings and frets allow.</summary>
internal sealed class HeightPlan
{
    private readonly SoloStretch stretch;
    private readonly Skeleton skeleton;
    private readonly PhraseModel model;
    private readonly (int Low, int High)[] ranges;
    private readonly double[] bends;

    /// <param name="stretch">The stretch.</param>
    /// <param name="skeleton">Its phrases.</param>
    /// <param name="finder">What there is to play.</param>
    /// <param name="hands">The frets of each bar.</param>
    /// <param name="model">The weights.</param>
    /// <param name="dice">Chance: no two phrases are bent alike.</param>
    public HeightPlan(SoloStretch stretch, Skeleton skeleton, PlaceFinder finder, IReadOnlyList<FretWindow?> hands, PhraseModel model, Dice dice)
    {
        (this.stretch, this.skeleton, this.model) = (stretch, skeleton, model);
        ranges = [.. stretch.Bars.Select((bar, i) => RangeOf(bar, finder, hands[i]))];
        bends = [.. skeleton.Phrases.Select(_ => dice.Share() * 0.3 - 0.15)];
    }

    /// <summary>A MIDI number, fractions included.</summary>
    public double At(Beats start)
    {
        var phrase = Array.FindLastIndex(skeleton.Phrases.ToArray(), p => stretch.Bars[p.First - 1].Start <= start);
        var plan = skeleton.Phrases[phrase];
        var begin = stretch.Bars[plan.First - 1].Start;
        var end = stretch.Bars[plan.Last - 1].Start + stretch.Bars[plan.Last - 1].Length;
        var passed = ((start - begin) / (end - begin)).ToDouble();
        var whole = (start / stretch.Length).ToDouble();
        // The whole: from a third of the range to nearly its top at the climax, and back to the middle.
        var arc = whole < model.Climax ? 0.35 + 0.4 * whole / model.Climax : 0.75 - 0.35 * (whole - model.Climax) / Math.Max(0.01, 1 - model.Climax);
        // A question ends above where it began, an answer below.
        var (from, top, to) = plan.Kind == PhraseKind.Answer ? (0.1, 0.15, -0.25) : (-0.1, 0.2, 0.05);
        var turn = 0.5;
        var own = passed < turn ? from + (top - from) * passed / turn : top + (to - top) * (passed - turn) / (1 - turn);
        var bar = Array.FindLastIndex(stretch.Bars.ToArray(), b => b.Start <= start);
        var (low, high) = ranges[bar];
        return low + (high - low) * Math.Clamp(arc + own + bends[phrase], 0, 1);
    }

    private static (int Low, int High) RangeOf(StretchBar bar, PlaceFinder finder, FretWindow? hand)
    {
        if (!bar.IsFree) return (60, 72);
        var heights = finder.At(bar, Beats.Of(1, 64), false, hand).Select(n => n.Height).ToImmutableArray();
        return heights.IsEmpty ? (60, 72) : (heights.Min(), heights.Max());
    }
}
