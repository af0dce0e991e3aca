using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Spelling;

/// <summary>A note on its way to a spelling: where it is and what is around it.</summary>
internal sealed class SpelledNote
{
    public required Note Note { get; init; }

    /// <summary>Quarter notes from the start.</summary>
    public required double Time { get; init; }

    /// <summary>Index of its bar.</summary>
    public required int Bar { get; init; }

    /// <summary>True at the start of a bar.</summary>
    public required bool IsOnBar { get; init; }

    /// <summary>True on a quarter note of its bar.</summary>
    public required bool IsOnBeat { get; init; }

    /// <summary>How much it tells about the key: more the longer it is.</summary>
    public required double Weight { get; init; }

    /// <summary>The root its degree is counted from.</summary>
    public required NoteName Root { get; init; }

    public required NoteSurroundings Surroundings { get; set; }

    /// <summary>The note this one is tied from.</summary>
    public SpelledNote? TiedFrom { get; init; }

    /// <summary>The place of its name on the line of fifths, once decided.</summary>
    public int Fifths { get; set; }
}
