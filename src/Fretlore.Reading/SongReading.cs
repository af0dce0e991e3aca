using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Reading;

/// <summary>What the music of a song is: spellings, roles, chords and scales.</summary>
/// <param name="Spellings">For each note id its spelled sounding pitch.</param>
/// <param name="Degrees">For each note id its interval above the local root (chord root if there is a chord, else the key's tonic).</param>
/// <param name="Parts">One for each part of the song.</param>
/// <param name="Shapes">One for each named shape of the song.</param>
public sealed record SongReading(
    ImmutableArray<Pitch> Spellings, ImmutableArray<Interval> Degrees, ImmutableArray<PartReading> Parts, ImmutableArray<ShapeReading> Shapes)
{
    /// <summary>The key of each of the song's bars: stated in the sheet, or found from the notes.</summary>
    public ImmutableArray<Key> Keys { get; init; } = [];

    /// <summary>The key of the song as a whole: the first one stated, else the one that all its notes together make.</summary>
    public Key Home { get; init; }

    /// <summary>The keys as stretches of bars, each with its reason.</summary>
    public ImmutableArray<KeyStretch> KeyStretches { get; init; } = [];

    /// <summary>For each note id what it does in its place: chord tone, tension, passing tone and so on.</summary>
    public ImmutableArray<NoteRole> Roles { get; init; } = [];

    /// <summary>The best name of the chord that a named shape is; null where the song has no such shape.</summary>
    public ChordReading? ChordOf(string shape) => Shapes.IsDefault ? null : Shapes.FirstOrDefault(s => s.Shape == shape)?.Candidates.FirstOrDefault();

    public Pitch SpellingOf(NoteId note) => Spellings[note.Index];
}

/// <summary>The reading of one part.</summary>
/// <param name="Chords">Chords in the order of written bars.</param>
/// <param name="Phrases">Stretches of the part with their scales.</param>
public sealed record PartReading(ImmutableArray<ChordMoment> Chords, ImmutableArray<PhraseReading> Phrases)
{
    /// <summary>The closes of its sections, where the last two chords make one.</summary>
    public ImmutableArray<Cadence> Cadences { get; init; } = [];

    /// <summary>Symbols stated in the sheet that the notes don't bear out.</summary>
    public ImmutableArray<SymbolConflict> Conflicts { get; init; } = [];
}

/// <summary>A symbol stated in the sheet that the notes don't bear out.</summary>
/// <param name="At">A note of the moment the symbol stands at.</param>
/// <param name="Symbol">As stated.</param>
/// <param name="Heard">The name of what sounds there; null when the symbol can't be read as a chord at all.</param>
/// <param name="Missing">Notes the symbol needs that sound in no part; empty when it is rather that too many others sound.</param>
public sealed record SymbolConflict(NoteId At, string Symbol, string? Heard, ImmutableArray<NoteName> Missing);

/// <summary>A chord from a place in a written bar on.</summary>
/// <param name="Bar">Index into the song's bars.</param>
/// <param name="At">Quarter notes from the bar's start.</param>
/// <param name="Candidates">Names, best first; at least one.</param>
/// <param name="Override">The symbol the writer put in the sheet, shown instead of the best name.</param>
public sealed record ChordMoment(int Bar, Beats At, ImmutableArray<ChordReading> Candidates, string? Override)
{
    public ChordReading Best => Candidates[0];

    /// <summary>What the chord does in its key; null when it has no name in pieces.</summary>
    public ChordFunction? Function { get; init; }

    public string Symbol => Override ?? Best.Symbol;

    /// <summary>The symbol in a style; what the sheet states stands as it is.</summary>
    public string SymbolIn(ChordStyle style) => Override ?? Best.SymbolIn(style);
}

/// <summary>One name for a set of notes.</summary>
/// <param name="Symbol">As printed, such as <c>F#m7/A</c>.</param>
/// <param name="Root">The root.</param>
/// <param name="Kind">The kind's symbol without root and bass, such as <c>m7</c>; empty for a major triad.</param>
/// <param name="Bass">The lowest note.</param>
/// <param name="Notes">The notes that sound, spelled, from the root up, each once.</param>
/// <param name="Reason">Why, in words a teacher can read out.</param>
/// <param name="Cost">Lower is better.</param>
public sealed record ChordReading(
    string Symbol, NoteName Root, string Kind, NoteName Bass, ImmutableArray<NoteName> Notes, string Reason, double Cost)
{
    /// <summary>The name in its pieces, for writing it in another style; null when the notes are no chord (one note alone).</summary>
    public ChordName? Name { get; init; }

    /// <summary>The symbol in a style; stacks, clusters and one chord on another have only one.</summary>
    public string SymbolIn(ChordStyle style) => style == ChordStyle.Letters || Name is not { } name ? Symbol : name.Symbol(style);

    /// <summary>What the cost is made of.</summary>
    public ImmutableArray<CostPart> Parts { get; init; } = [];
}

/// <summary>A phrase and the scales it may come from.</summary>
/// <param name="FirstBar">Index into the song's bars.</param>
/// <param name="BarCount">How many bars.</param>
/// <param name="Scales">Candidates, best first.</param>
public sealed record PhraseReading(int FirstBar, int BarCount, ImmutableArray<ScaleReading> Scales);

/// <summary>One scale for a set of notes.</summary>
/// <param name="Name">The scale's name, such as <c>Dorian</c>.</param>
/// <param name="Root">Its tonic.</param>
/// <param name="Missing">Scale notes that are not played.</param>
/// <param name="Outside">Played notes that are not in the scale.</param>
/// <param name="Reason">Why, in words a teacher can read out.</param>
/// <param name="Cost">Lower is better.</param>
public sealed record ScaleReading(
    string Name, NoteName Root, ImmutableArray<NoteName> Missing, ImmutableArray<NoteName> Outside, string Reason, double Cost);

/// <summary>A named shape with its names on its own neck.</summary>
public sealed record ShapeReading(string Shape, ImmutableArray<ChordReading> Candidates);
