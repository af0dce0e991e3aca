using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>The line that ends a bar.</summary>
public enum BarLine
{
    Single,
    Double,
    Final,
}

/// <summary>Whether eighths (or 16ths) are played even or swung.</summary>
/// <param name="Swung">The value that is swung, or null for straight.</param>
public readonly record struct Feel(ValueBase? Swung)
{
    public static Feel Straight => default;
}

/// <summary>A tempo at a place in a bar.</summary>
public readonly record struct TempoMark(Beats At, Tempo Tempo);

/// <summary>A written bar, shared by all parts.</summary>
public sealed record Bar
{
    /// <summary>The printed number: from 1; a pickup bar is 0 at the song's start and has the number of the bar before elsewhere.</summary>
    public required int Number { get; init; }

    public required Meter Meter { get; init; }

    public required Key? Key { get; init; }

    /// <summary>Its true length; less than the metre's for a pickup.</summary>
    public required Beats Length { get; init; }

    public bool IsPickup { get; init; }

    /// <summary>Tempo marks within this bar; the song's first bar always has one at its start.</summary>
    public ValueList<TempoMark> Tempos { get; init; }

    /// <summary>The feel from this bar on, where it changes.</summary>
    public Feel? FeelChange { get; init; }

    public bool StartsRepeat { get; init; }

    /// <summary>How often the repeat that ends here is played in all (2 or more); 0 when none ends here.</summary>
    public int RepeatCount { get; init; }

    /// <summary>The passes (1, 2, ...) in which this bar is played when it belongs to an ending; empty otherwise.</summary>
    public ValueList<int> EndingPasses { get; init; }

    public bool StartsEnding { get; init; }

    public bool EndsEnding { get; init; }

    public BarLine EndLine { get; init; }

    /// <summary>Whether the segno stands at its start, where "dal segno" goes back to.</summary>
    public bool IsSegno { get; init; }

    /// <summary>Whether the coda begins with it.</summary>
    public bool IsCoda { get; init; }

    /// <summary>Where it is gone to from its end.</summary>
    public Jump Jump { get; init; }
}

/// <summary>One bar as it is played, with repeats unrolled.</summary>
/// <param name="Bar">Index into <see cref="Song.Bars"/>.</param>
/// <param name="Pass">1 for the first time through its repeat; after a jump back a repeat is played once more, as its last pass.</param>
/// <param name="Start">Quarter notes from the song's start.</param>
public readonly record struct PlayedBar(int Bar, int Pass, Beats Start);
