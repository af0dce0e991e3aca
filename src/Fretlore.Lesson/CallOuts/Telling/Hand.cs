using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Lesson.CallOuts.Telling;

/// <summary>What the listener knows at a moment of the telling, so that it need not be said again.</summary>
internal sealed record Hand
{
    /// <summary>The strings in force, low to high; empty when none are.</summary>
    public ValueList<StringNumber> Place { get; init; }

    /// <summary>The value in force.</summary>
    public (NoteValue Value, Tuplet? Tuplet)? Label { get; init; }

    /// <summary>The last fret sounded on each string.</summary>
    public ImmutableDictionary<StringNumber, int> Frets { get; init; } = ImmutableDictionary<StringNumber, int>.Empty;

    /// <summary>What sounded last.</summary>
    public ValueList<Note> Last { get; init; }

    public bool PalmMuted { get; init; }

    public bool Ringing { get; init; }

    /// <summary>True once a fret was called "fret seven"; from then on "seven" will do.</summary>
    public bool SaidFret { get; init; }

    /// <summary>The last stopped fret said, for calling out a change of position.</summary>
    public int Position { get; init; }

    /// <summary>True when a pattern with a name was said last, so that a plain value after it must be said.</summary>
    public bool AfterCell { get; init; }

    /// <summary>Several strings that were named before.</summary>
    public ImmutableList<ValueList<StringNumber>> Places { get; init; } = [];

    /// <summary>The shape last spelled out, for "this shape".</summary>
    public ValueList<Note> Shape { get; init; }

    /// <summary>The shape that sounded last in this bar, for "again".</summary>
    public ValueList<Note> Again { get; init; }

    /// <summary>The natural harmonic that sounded last in this bar, for "the same" on another string.</summary>
    public Harmonic? Harmonic { get; init; }

    /// <summary>Shapes with names that were spelled out.</summary>
    public ImmutableDictionary<string, ValueList<Note>> Named { get; init; } = ImmutableDictionary<string, ValueList<Note>>.Empty;

    /// <summary>The shape that is held while its strings are picked, and whether it rings.</summary>
    public string? Held { get; init; }

    public Hand After(Event item)
    {
        if (item.IsRest) return this;
        var frets = Frets;
        foreach (var note in item.Graces.Concat(item.Notes)) frets = frets.SetItem(note.String, note.Fret.Number);
        var harmonic = item.Notes is [{ Harmonic: { Kind: HarmonicKind.Natural } natural }] ? natural : null;
        return this with { Harmonic = harmonic, Frets = frets, Last = item.Notes, Again = StringsAndFrets(Again) == StringsAndFrets(item.Notes) ? Again : [] };
    }

    private static ValueList<(StringNumber, Fret)> StringsAndFrets(ValueList<Note> notes) => notes.Select(n => (n.String, n.Fret)).ToValueList();

    /// <summary>Another strand or bar that does not go on from here: place and value must be said anew.</summary>
    public Hand Moved() => this with { Place = [], Label = null, Held = null, Again = [], Harmonic = null };
}
