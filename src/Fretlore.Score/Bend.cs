using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>What a bend does to one note, in the order played.</summary>
/// <param name="FromCents">Cents above the fretted pitch when the note (or this held value of it) begins; above 0 for a pre-bend.</param>
/// <param name="ToCents">The heights reached one after another, in cents above the fretted pitch; 0 is a full release.</param>
/// <remarks><c>15+</c> is from 0 to [200]; <c>15+-</c> is 0 to [200, 0]; <c>+15-</c> is from 200 to [0]. A held value goes on from where the last one ended.</remarks>
public sealed record Bend(int FromCents, ValueList<int> ToCents)
{
    /// <summary>Cents above the fretted pitch when the note ends.</summary>
    public int EndCents => ToCents.Count > 0 ? ToCents[^1] : FromCents;

    /// <summary>The highest point in cents.</summary>
    public int PeakCents => ToCents.Items.Prepend(FromCents).Max();
}

/// <summary>Vibrato: none, the usual width, or wide.</summary>
public enum VibratoWidth : byte
{
    None,
    Normal,
    Wide,
}

/// <summary>Vibrato and when in a bend it comes.</summary>
/// <param name="Width">None, normal or wide.</param>
/// <param name="AfterMoves">How many moves of the note's bend come before it; 0 is at the start, 255 after as many as there are.</param>
public readonly record struct Vibrato(VibratoWidth Width, int AfterMoves = 0)
{
    // A byte: a song holds as many of these as it has notes.
    private readonly byte afterMoves = (byte)Math.Clamp(AfterMoves, 0, byte.MaxValue);

    public int AfterMoves
    {
        get => afterMoves;
        init => afterMoves = (byte)Math.Clamp(value, 0, byte.MaxValue);
    }
}
