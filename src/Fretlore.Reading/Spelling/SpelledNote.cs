using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Spelling;

/// <summary>A note on its way to a spelling: where it is, what is around it, and its place on the line of fifths so far.</summary>
internal sealed class SpelledNote
{
    public required Note Note { get; init; }

    /// <summary>Quarter notes from the start.</summary>
    public required double Time { get; init; }

    /// <summary>How much it tells about its neighbours: more the longer it is.</summary>
    public required double Weight { get; init; }

    /// <summary>The middle of the key's notes on the line of fifths.</summary>
    public required int Centre { get; init; }

    /// <summary>Where a plain chord of the moment has it, or null.</summary>
    public int? ByChord { get; init; }

    /// <summary>True for a note of the key: it may lead anywhere without being renamed for it.</summary>
    public required bool IsInKey { get; init; }

    /// <summary>The root its degree is counted from.</summary>
    public required NoteName Root { get; init; }

    /// <summary>The place on the line of fifths.</summary>
    public required int Fifths { get; set; }

    /// <summary>Notes of the same line that follow a semitone away; null for none.</summary>
    public List<SpelledNote>? Goals { get; set; }

    /// <summary>Notes of the same line that came before it a semitone away; null for none.</summary>
    public List<SpelledNote>? Sources { get; set; }

    /// <summary>The note this one is tied from.</summary>
    public SpelledNote? TiedFrom { get; init; }
}
