using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>A note to land on, with every rule that asks for it.</summary>
/// <param name="At">Quarter notes from the bar's start.</param>
/// <param name="Rules">Aims, and the end.</param>
internal sealed record PlannedTarget(Beats At, ImmutableArray<RoadMapRule> Rules)
{
    public IEnumerable<(NoteName Target, Approach? How, Guitar.StringNumber? String)> Wanted => Rules.Select(r => r is AimRule aim
        ? (aim.Target, aim.How, aim.String)
        : r is EndRule end ? (end.Target, end.How, end.String) : throw new InvalidOperationException("A target is an aim or the end."));
}

/// <summary>A lick where it is used.</summary>
/// <param name="Rule">The rule that allows it.</param>
/// <param name="Riff">The lick.</param>
/// <param name="First">Its first bar in the stretch, from 1.</param>
/// <param name="Kept">How many of its moments are played as written.</param>
/// <param name="EndsEarly">True when the rest is left out; false when it gets other notes.</param>
internal sealed record PlannedLick(LickRule Rule, Riff Riff, int First, int Kept, bool EndsEarly)
{
    public int Last => First + Riff.Bars.Count - 1;
}

/// <summary>A phrase before it has notes.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="First">Its first bar, from 1.</param>
/// <param name="Last">Its last bar.</param>
/// <param name="Echoes">Index of the phrase it answers; -1 for none.</param>
internal sealed record PlannedPhrase(PhraseKind Kind, int First, int Last, int Echoes = -1)
{
    /// <summary>Where its last note begins in its last bar; null for a fixed phrase or a lick that ends as written.</summary>
    public Beats? Landing { get; init; }

    public PlannedLick? Lick { get; init; }

    public string? Riff { get; init; }

    /// <summary>Scale steps that a sequence is moved by.</summary>
    public int Shift { get; init; }
}

/// <summary>A solo before it has rhythm and notes: phrases, licks, and where targets are hit.</summary>
/// <param name="Phrases">In order of time; together they are all bars.</param>
/// <param name="Targets">For each bar, from 1, its targets in order of time.</param>
/// <param name="HasEnd">True when the last phrase lands on the road map's end.</param>
internal sealed record Skeleton(ImmutableArray<PlannedPhrase> Phrases, ImmutableArray<ImmutableArray<PlannedTarget>> Targets, bool HasEnd)
{
    public ImmutableArray<PlannedTarget> TargetsIn(int bar) => Targets[bar - 1];
}
