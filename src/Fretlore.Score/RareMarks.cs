using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>What few notes have, apart from the note so that the others are small.</summary>
internal sealed record RareMarks
{
    private static readonly RareMarks None = new();

    public Bend? Bend { get; init; }

    public Harmonic? Harmonic { get; init; }

    public Fret? Trill { get; init; }

    public int DipCents { get; init; }

    public ValueBase? Tremolo { get; init; }

    public int VibratoAfterMoves { get; init; }

    /// <summary>These marks, or what there are none of yet.</summary>
    public static RareMarks Of(RareMarks? marks) => marks ?? None;

    /// <summary>Null when nothing is set, so that notes are alike however they came to have nothing.</summary>
    public RareMarks? OrNull() => this == None ? null : this;
}
