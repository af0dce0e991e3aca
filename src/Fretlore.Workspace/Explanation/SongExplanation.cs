namespace Fretlore.Workspace.Explanation;

/// <summary>What the music of a song is, in words: keys, then section by section the scales, chords and notes of each part, each with its reason.</summary>
/// <param name="Title">The song's title.</param>
/// <param name="Keys">Stretches of one key; those of the asked bar only when one was asked for.</param>
/// <param name="Sections">Sections in written order.</param>
public sealed record SongExplanation(string Title, IReadOnlyList<ExplainedKey> Keys, IReadOnlyList<ExplainedSection> Sections);

/// <summary>A stretch in one key; bars by their printed numbers.</summary>
public sealed record ExplainedKey(int FirstBar, int LastBar, string Key, bool IsStated, string Reason);

/// <summary>A section and what each part that plays does in it.</summary>
public sealed record ExplainedSection(string Name, int FirstBar, int LastBar, IReadOnlyList<ExplainedPart> Parts);

/// <summary>One part in one section.</summary>
/// <param name="Name">Its short name.</param>
/// <param name="Title">The name on pages.</param>
/// <param name="Scales">The best scale of each phrase that reaches into the section.</param>
/// <param name="Bars">Bars in which it plays.</param>
/// <param name="Cadence">How its chords close the section, or null.</param>
public sealed record ExplainedPart(
    string Name, string Title, IReadOnlyList<ExplainedScale> Scales, IReadOnlyList<ExplainedBar> Bars, string? Cadence);

/// <summary>A phrase's scale.</summary>
public sealed record ExplainedScale(int FirstBar, int LastBar, string Scale, string Reason);

/// <summary>One bar of one part.</summary>
public sealed record ExplainedBar(int Bar, IReadOnlyList<ExplainedChord> Chords, IReadOnlyList<ExplainedNote> Notes);

/// <summary>A chord.</summary>
/// <param name="Beat">From 1, counted in the metre's lower number: the fourth eighth of 6/8 is 4.</param>
/// <param name="Symbol">As printed.</param>
/// <param name="Reading">The computed name where the sheet says another symbol; null otherwise.</param>
/// <param name="Numeral">Roman numeral, or null.</param>
/// <param name="Function">What it does in the key, or null.</param>
/// <param name="Reason">Why it has this name.</param>
public sealed record ExplainedChord(double Beat, string Symbol, string? Reading, string? Numeral, string? Function, string Reason);

/// <summary>A note that is struck.</summary>
/// <param name="Beat">As in <see cref="ExplainedChord"/>.</param>
/// <param name="String">1 is the highest.</param>
/// <param name="Fret">As written under the capo.</param>
/// <param name="Pitch">Its sounding pitch without bend, spelled.</param>
/// <param name="Kind">chord tone, tension, passing tone, neighbour tone, approach note, key note, outside or dead.</param>
/// <param name="Degree">Above the chord's root, or the key's tonic where no chord sounds: <c>b3</c>, <c>9</c>.</param>
/// <param name="Role">In words.</param>
/// <param name="Finger">1 to 4 from index to little finger, 0 for the thumb; null where none holds it.</param>
/// <param name="Position">The fret the index finger stands at; null where nothing is held.</param>
public sealed record ExplainedNote(double Beat, int String, int Fret, string Pitch, string Kind, string Degree, string Role, int? Finger, int? Position);
