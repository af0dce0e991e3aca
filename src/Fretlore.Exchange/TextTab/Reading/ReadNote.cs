using Fretlore.Score;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>One note as its signs say it.</summary>
internal sealed class ReadNote
{
    /// <summary>Where it stands in the bar, in characters.</summary>
    public required int Column { get; init; }

    public required TabLine Line { get; init; }

    /// <summary>Where it stands in its line.</summary>
    public required int Index { get; init; }

    /// <summary>String 1 is 1.</summary>
    public required int String { get; init; }

    public int Fret { get; set; }

    public Attack Attack { get; set; }

    public GlideIn GlideIn { get; set; }

    public GlideOut GlideOut { get; set; }

    public bool IsDead { get; set; }

    public bool IsGhost { get; set; }

    public Harmonic? Harmonic { get; set; }

    public VibratoWidth Vibrato { get; set; }

    public int VibratoAfter { get; set; }

    /// <summary>Cents above the fret when it is picked.</summary>
    public int BentBefore { get; set; }

    /// <summary>The heights reached after that, in cents above the fret.</summary>
    public List<int> Bends { get; } = [];

    public List<ReadNote> Graces { get; } = [];

    /// <summary>True when its signs begin with a bracket, which some type in the column of the fret.</summary>
    public bool HasBracket { get; set; }

    public int BentTo => Bends.Count > 0 ? Bends[^1] : BentBefore;
}

/// <summary>What is known of a string from the notes before.</summary>
internal sealed class StringState
{
    public ReadNote? Last { get; set; }

    /// <summary>How the next note is reached from the last one, when a sign says so.</summary>
    public Attack Joint { get; set; }

    /// <summary>Whether the glide to the next note is upwards; null when its sign does not say.</summary>
    public bool? GlidesUp { get; set; }
}
