namespace Fretlore.Music.Chords;

/// <summary>How chord symbols are written.</summary>
public enum ChordStyle
{
    /// <summary><c>maj7</c>, <c>m7b5</c>, <c>dim7</c>.</summary>
    Letters,

    /// <summary>Triangle, half-diminished circle, circle, plus and dash.</summary>
    Signs,
}
