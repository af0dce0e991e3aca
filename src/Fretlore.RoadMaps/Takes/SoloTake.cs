using System.Collections.Immutable;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.RoadMaps.Checking;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>What a phrase of a take does.</summary>
public enum PhraseKind
{
    /// <summary>Played as the road map has it.</summary>
    Fixed,

    /// <summary>Stands for itself, or asks: it lands on a note that wants to go on.</summary>
    Question,

    /// <summary>Says the phrase before it again, to another end, and comes to rest.</summary>
    Answer,

    /// <summary>Says the phrase before it again at another height.</summary>
    Sequence,

    /// <summary>Draws on a lick.</summary>
    Lick,
}

/// <summary>A phrase of a take.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="FirstBar">Bar of the stretch, from 1.</param>
/// <param name="BarCount">How many bars.</param>
/// <param name="Start">Where its first note begins, in quarter notes from the stretch's start.</param>
/// <param name="End">Where its last note ends; a breath follows.</param>
/// <param name="Of">The riff it is, or draws on; null for none.</param>
public sealed record TakePhrase(PhraseKind Kind, int FirstBar, int BarCount, Beats Start, Beats End, string? Of = null);

/// <summary>A whole solo made from a road map: one of many.</summary>
public sealed record SoloTake
{
    /// <summary>From 1, in the order made.</summary>
    public required int Number { get; init; }

    /// <summary>From 0, easy, to 1, all there is.</summary>
    public required double Level { get; init; }

    /// <summary>What the part plays in each bar of the stretch.</summary>
    public required ImmutableArray<PartBar> Bars { get; init; }

    public required ImmutableArray<TakePhrase> Phrases { get; init; }

    /// <summary>The rules kept, licks used and targets hit, as the checker found them.</summary>
    public required RoadMapCheck Check { get; init; }

    /// <summary>What it asks of the fretting hand.</summary>
    public required HandLoad Hands { get; init; }

    /// <summary>How many were drawn and thrown away before this one.</summary>
    public int Discarded { get; init; }
}
