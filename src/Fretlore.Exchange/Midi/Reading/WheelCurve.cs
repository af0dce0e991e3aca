using Fretlore.Exchange.Import;
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

    /// <summary>Puts on a note what the wheel does while it sounds; how it ends is left to its last value.</summary>
    public void Put(RawNote note)
    {
        note.Marks = note.Marks with { GlideIn = GlideIn, Vibrato = new Vibrato(Vibrato, VibratoAfter) };
        if (From > 0) note.Bends.Add((From, true));
        var at = From;
        foreach (var to in To)
        {
            note.Bends.Add((to - at, false));
            at = to;
        }
    }
}
