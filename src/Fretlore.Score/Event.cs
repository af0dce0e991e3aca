using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>One moment of a strand: notes that start together, or a rest, for one written value.</summary>
public sealed record Event
{
    /// <summary>From the start of the bar, in quarter notes.</summary>
    public required Beats Start { get; init; }

    public required NoteValue Value { get; init; }

    public Tuplet? Tuplet { get; init; }

    /// <summary>The sounding length: the value, with the tuplet's factor.</summary>
    public Beats Duration => Tuplet is { } tuplet ? Value.Length * tuplet.Factor : Value.Length;

    public Beats End => Start + Duration;

    /// <summary>From the low string to the high one; empty is a rest.</summary>
    public ValueList<Note> Notes { get; init; }

    /// <summary>Grace notes before the event, in order; they take no time of their own.</summary>
    public ValueList<Note> Graces { get; init; }

    public Stroke Stroke { get; init; }

    /// <summary>A finger of the picking hand (p, i, m, a, c) when the sheet says it.</summary>
    public char? PickingFinger { get; init; }

    public Roll Roll { get; init; }

    public Spans Spans { get; init; }

    public Dynamic? Dynamic { get; init; }

    /// <summary>Whether it is held for longer than it is written, by all parts.</summary>
    public bool HasFermata { get; init; }

    /// <summary>Words above the staff at this moment.</summary>
    public string? Words { get; init; }

    /// <summary>The named shape the notes were written with.</summary>
    public string? Shape { get; init; }

    /// <summary>A chord symbol the writer wants here instead of the reading's.</summary>
    public string? ChordSymbol { get; init; }

    public bool IsRest => Notes.Count == 0;

    /// <summary>A stroke of the hand that touches no string: a rest with a stroke.</summary>
    public bool IsAirStroke => IsRest && Stroke != Stroke.None;
}
