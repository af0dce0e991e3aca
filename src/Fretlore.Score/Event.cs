using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>One moment of a strand: notes that start together, or a rest, for one written value.</summary>
/// <remarks>A song holds thousands: what few of them have lies apart in <see cref="RareSigns"/>.</remarks>
public sealed record Event
{
    private readonly RareSigns? rare;

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
    public ValueList<Note> Graces
    {
        get => rare?.Graces ?? default;
        init => rare = rare is null && value.Count == 0 ? null : (RareSigns.Of(rare) with { Graces = value }).OrNull();
    }

    public Stroke Stroke { get; init; }

    /// <summary>A finger of the picking hand (p, i, m, a, c) when the sheet says it.</summary>
    public char? PickingFinger
    {
        get => rare?.PickingFinger;
        init => rare = rare is null && value is null ? null : (RareSigns.Of(rare) with { PickingFinger = value }).OrNull();
    }

    public Roll Roll { get; init; }

    public Spans Spans { get; init; }

    public Dynamic? Dynamic
    {
        get => rare?.Dynamic;
        init => rare = rare is null && value is null ? null : (RareSigns.Of(rare) with { Dynamic = value }).OrNull();
    }

    /// <summary>Whether it is held for longer than it is written, by all parts.</summary>
    public bool HasFermata { get; init; }

    /// <summary>Words above the staff at this moment.</summary>
    public string? Words
    {
        get => rare?.Words;
        init => rare = rare is null && value is null ? null : (RareSigns.Of(rare) with { Words = value }).OrNull();
    }

    /// <summary>The named shape the notes were written with.</summary>
    public string? Shape
    {
        get => rare?.Shape;
        init => rare = rare is null && value is null ? null : (RareSigns.Of(rare) with { Shape = value }).OrNull();
    }

    /// <summary>A chord symbol the writer wants here instead of the reading's.</summary>
    public string? ChordSymbol
    {
        get => rare?.ChordSymbol;
        init => rare = rare is null && value is null ? null : (RareSigns.Of(rare) with { ChordSymbol = value }).OrNull();
    }

    public bool IsRest => Notes.Count == 0;

    /// <summary>A stroke of the hand that touches no string: a rest with a stroke.</summary>
    public bool IsAirStroke => IsRest && Stroke != Stroke.None;
}
