using Fretlore.Hands.Placing;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>What became of a note that is not as it was.</summary>
public enum RetuneLossKind
{
    /// <summary>It is not on the new neck, or no string is free for it: left out.</summary>
    NoteLeftOut,

    /// <summary>It is not on the new neck at its height: an octave or more away.</summary>
    OctaveMoved,

    /// <summary>An open string that sounded on under other notes is stopped by a finger now.</summary>
    DroneStopped,

    /// <summary>A note that rang on is cut off by another one on its string.</summary>
    RingCutShort,

    /// <summary>A natural harmonic that no open string has: stopped, and touched an octave above.</summary>
    HarmonicTouched,

    /// <summary>What one finger, or none, held needs more fingers now.</summary>
    OneFingerShapeLost,
}

/// <summary>One thing lost in retuning.</summary>
/// <param name="Kind">What.</param>
/// <param name="Bar">Index into the written bars of the song, or of the riff.</param>
/// <param name="Note">The note in the song that was retuned; the lowest one of a shape.</param>
/// <param name="Was">Its string and fret there.</param>
/// <param name="Wanted">What should sound.</param>
/// <param name="Place">Where it is now; null where it is left out.</param>
public sealed record RetuneLoss(RetuneLossKind Kind, int Bar, NoteId Note, (Guitar.StringNumber String, Guitar.Fret Fret) Was, Height Wanted, NotePlace? Place);

/// <summary>A song in another tuning.</summary>
/// <param name="Song">The song; riffs and shapes that other parts still play in the old tuning are there twice.</param>
/// <param name="Parts">For each part what was lost in it, in the order of its bars.</param>
/// <param name="Riffs">What was lost in riffs that no part plays, by name.</param>
public sealed record RetunedSong(Song Song, ValueList<ValueList<RetuneLoss>> Parts, ValueList<(string Riff, ValueList<RetuneLoss> Losses)> Riffs)
{
    /// <summary>How much was lost, for comparing ways: notes count most.</summary>
    public double Weight => Parts.Sum(part => part.Sum(loss => WeightOf(loss.Kind)));

    internal static double WeightOf(RetuneLossKind kind) => kind switch
    {
        RetuneLossKind.NoteLeftOut => 4,
        RetuneLossKind.OctaveMoved => 3,
        RetuneLossKind.HarmonicTouched or RetuneLossKind.DroneStopped => 1,
        _ => 0.5,
    };
}
