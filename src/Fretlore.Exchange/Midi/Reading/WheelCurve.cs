using Fretlore.Score;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>What a pitch wheel does to one note, as a guitarist would say it.</summary>
internal sealed class WheelCurve
{
    public GlideIn GlideIn { get; set; }

    public GlideOut GlideOut { get; set; }

    /// <summary>True when it ends where the next note of its string begins, a glide to it.</summary>
    public bool GlidesOn { get; set; }

    /// <summary>Cents above the note at which it starts.</summary>
    public int From { get; set; }

    /// <summary>Where its bends lead, in cents above the note.</summary>
    public List<int> To { get; } = [];

    public VibratoWidth Vibrato { get; set; }

    public int VibratoAfter { get; set; }

    /// <summary>True for dips of the tremolo arm.</summary>
    public bool IsArm { get; set; }

    /// <summary>True when something below the note's own pitch is left out.</summary>
    public bool LeavesOut { get; set; }
}
