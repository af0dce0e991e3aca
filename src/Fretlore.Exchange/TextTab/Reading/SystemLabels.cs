using Fretlore.Music;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>A note value over a column.</summary>
/// <param name="Column">The place in its line.</param>
/// <param name="Value">The value.</param>
/// <param name="Tuplet">Its tuplet, or null.</param>
internal sealed record ReadValue(int Column, NoteValue Value, Tuplet? Tuplet)
{
    public Beats Length => Tuplet is { } t ? Value.Length * t.Factor : Value.Length;
}

/// <summary>A way of playing over the columns from one to another, such as <c>PM</c>.</summary>
internal sealed record ReadStretch(string Word, int From, int To);

/// <summary>A word over a column.</summary>
internal sealed record ReadLabel(int Column, string Text);

/// <summary>What stands above and below the strings of a system, by columns of its lines.</summary>
internal sealed class SystemLabels
{
    public List<ReadValue> Values { get; } = [];

    /// <summary>Bars of rest that one bar stands for.</summary>
    public List<(int Column, int Count)> Rests { get; } = [];

    /// <summary>Counted beats and parts of them: <c>1 e &amp; a 2</c>.</summary>
    public List<(int Column, Beats Place)> Counts { get; } = [];

    public List<ReadLabel> Chords { get; } = [];

    public List<ReadStretch> Stretches { get; } = [];

    /// <summary>Strokes and fingers of the picking hand, one letter each.</summary>
    public List<ReadLabel> Hand { get; } = [];

    /// <summary>Accents, staccato, rolls.</summary>
    public List<ReadLabel> Marks { get; } = [];

    /// <summary>What stood in parentheses.</summary>
    public List<ReadLabel> Changes { get; } = [];

    /// <summary>What stood in quotes.</summary>
    public List<ReadLabel> Words { get; } = [];

    public List<(int From, int To, ValueList<int> Passes)> Endings { get; } = [];

    /// <summary>Repeats that say how often, <c>x3</c>.</summary>
    public List<(int Column, int Count)> Times { get; } = [];

    /// <summary>Lines that are none of this.</summary>
    public List<TabLine> Rest { get; } = [];

    /// <summary>True when riffs are named.</summary>
    public bool NamesRiffs { get; set; }
}
