using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>What few events have, apart from the event so that the others are small.</summary>
internal sealed record RareSigns
{
    private static readonly RareSigns None = new();

    public ValueList<Note> Graces { get; init; }

    public char? PickingFinger { get; init; }

    public Dynamic? Dynamic { get; init; }

    public string? Words { get; init; }

    public string? Shape { get; init; }

    public string? ChordSymbol { get; init; }

    /// <summary>These signs, or what there are none of yet.</summary>
    public static RareSigns Of(RareSigns? signs) => signs ?? None;

    /// <summary>Null when nothing is set, so that events are alike however they came to have nothing.</summary>
    public RareSigns? OrNull() => this == None ? null : this;
}
