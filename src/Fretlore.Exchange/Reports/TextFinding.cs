namespace Fretlore.Exchange.Reports;

/// <summary>What can be said of a place in a text that was read.</summary>
public enum TextFindingKind
{
    /// <summary>No tuning is said, or not in which octave.</summary>
    TuningTaken,

    /// <summary>No metre is said.</summary>
    MetreTaken,

    /// <summary>No tempo is said.</summary>
    TempoTaken,

    /// <summary>No note values are written: they are taken from how far apart the notes stand.</summary>
    RhythmFromSpacing,

    /// <summary>The notes stand too unevenly to show a rhythm.</summary>
    RhythmUneven,

    /// <summary>The strings' lines don't end, or don't have their bar lines, at the same places.</summary>
    LinesUneven,

    /// <summary>There are no bar lines to go by.</summary>
    BarLinesTaken,

    /// <summary>The values written don't fill the metre.</summary>
    BarLengthOdd,

    /// <summary>A sign that is not known.</summary>
    UnknownSign,

    /// <summary>Digits that are too large for one fret.</summary>
    DigitsParted,

    /// <summary>A bend without a word on how far.</summary>
    BendTaken,

    /// <summary>A system with more or fewer lines than the part has strings.</summary>
    LinesMissing,

    /// <summary>A word such as x4 beside the strings.</summary>
    RepeatTaken,

    /// <summary>A fret that no neck has.</summary>
    NoSuchFret,

    /// <summary>A fret of a string that a capo covers further up.</summary>
    FretBehindCapo,

    /// <summary>A capo on strings that the part does not have, or on all of them by name.</summary>
    CapoMisplaced,

    /// <summary>A letter O where a zero must be meant.</summary>
    LetterTakenForZero,

    /// <summary>The lowest string is at the top.</summary>
    UpsideDown,

    /// <summary>The text does not say in which encoding it is.</summary>
    EncodingTaken,
}

/// <summary>One thing that was guessed in a text, or could not be read, at its place.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1, in UTF-16 units.</param>
/// <param name="Length">UTF-16 units.</param>
/// <param name="What">What is found or taken, such as a tuning or a sign; empty when the kind says it all.</param>
/// <param name="SourceLine">The line it is in, as far as it is worth showing.</param>
public sealed record TextFinding(TextFindingKind Kind, int Line, int Column, int Length, string What, string SourceLine);
