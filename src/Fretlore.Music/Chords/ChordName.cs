namespace Fretlore.Music.Chords;

/// <summary>A chord by root, kind and bass.</summary>
/// <param name="Root">The root, spelled.</param>
/// <param name="Kind">What stands on it.</param>
/// <param name="Bass">The lowest note, spelled.</param>
public readonly record struct ChordName(NoteName Root, ChordKind Kind, NoteName Bass)
{
    /// <summary>The whole symbol, such as <c>F#m7/A</c>; the bass is written only when it is not the root.</summary>
    public string Symbol(ChordStyle style = ChordStyle.Letters) =>
        Bass == Root ? Root + Kind.Symbol(style) : Root + Kind.Symbol(style) + "/" + Bass;

    public override string ToString() => Symbol();
}
