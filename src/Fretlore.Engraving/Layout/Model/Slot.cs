using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>What a note head looks like.</summary>
internal enum HeadShape
{
    Whole,
    Half,
    Black,
    Cross,
    OpenDiamond,
    BlackDiamond,
}

/// <summary>A note as it stands on the staff.</summary>
/// <param name="Note">The note of the song.</param>
/// <param name="Position">Half spaces above the bottom line.</param>
/// <param name="Shape">The head.</param>
/// <param name="Accidental">Alteration to print before it, or null for none.</param>
internal sealed record Head(Note Note, int Position, HeadShape Shape, int? Accidental)
{
    /// <summary>Spaces below the top line.</summary>
    public double Y => 4 - Position / 2.0;
}

/// <summary>Pitches that notes of a slot come to together after they began, bent or trilled: small heads without a stem, right of the notes' own.</summary>
/// <param name="Of">For each small head, which of the slot's heads comes to it.</param>
/// <param name="Heads">The small heads, low to high.</param>
/// <param name="Shape">Where they and their accidentals stand beside each other, at full size.</param>
internal sealed record ReachedStep(ImmutableArray<int> Of, ImmutableArray<Head> Heads, ChordShape Shape);

/// <summary>Where a stem goes.</summary>
internal enum StemSide
{
    None,
    Up,
    Down,
}

/// <summary>One event of a voice with everything about its signs that does not depend on where it ends up on the page.</summary>
internal sealed record Slot
{
    public required Event Event { get; init; }

    /// <summary>Index into the measures.</summary>
    public required int Measure { get; init; }

    /// <summary>Index into the measure's columns.</summary>
    public required int Column { get; init; }

    /// <summary>Low to high; empty for a rest.</summary>
    public ImmutableArray<Head> Heads { get; init; } = [];

    public ImmutableArray<Head> Graces { get; init; } = [];

    /// <summary>What bends of its notes reach, step by step.</summary>
    public ImmutableArray<ReachedStep> Reached { get; init; } = [];

    /// <summary>The pitches its notes are trilled with; null when none is.</summary>
    public ReachedStep? Trilled { get; init; }

    public StemSide Stem { get; init; }

    /// <summary>The beam group of its voice that it belongs to, or -1.</summary>
    public int Beam { get; init; } = -1;

    public ChordShape Shape { get; init; } = ChordShape.Empty;

    /// <summary>How far it stands right of its column to keep clear of the other voice.</summary>
    public double Shift { get; init; }

    /// <summary>The right end of the ink of all voices in its column, with what bends reach, right of the column.</summary>
    public double RightOfColumn { get; init; }

    public bool IsRest => Heads.Length == 0;

    /// <summary>Flags or beams of its value: 1 for an eighth.</summary>
    public int Flags => FlagsOf(Event.Value.Base);

    public Head Highest => Heads[^1];

    public Head Lowest => Heads[0];

    /// <summary>The head a stem ends nearest to.</summary>
    public Head NearTip => Stem == StemSide.Up ? Highest : Lowest;

    public Head FarFromTip => Stem == StemSide.Up ? Lowest : Highest;

    public static int FlagsOf(ValueBase value) => value switch
    {
        ValueBase.Eighth => 1,
        ValueBase.Sixteenth => 2,
        ValueBase.ThirtySecond => 3,
        ValueBase.SixtyFourth => 4,
        _ => 0,
    };
}

/// <summary>Where the parts of a chord stand beside each other, right of the column in spaces.</summary>
/// <param name="HeadX">Left edge of each head.</param>
/// <param name="AccidentalX">Origin of each head's accidental; not a number where there is none.</param>
/// <param name="Dots">Each dot's left edge and staff position.</param>
/// <param name="StemX">The middle of the stem.</param>
/// <param name="Left">Ink to the left, 0 or negative.</param>
/// <param name="Right">Ink to the right.</param>
internal sealed record ChordShape(
    ImmutableArray<double> HeadX, ImmutableArray<double> AccidentalX, ImmutableArray<(double X, int Position)> Dots, double StemX, double Left, double Right)
{
    public static ChordShape Empty { get; } = new([], [], [], 0, 0, 0);
}
