using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>A stretch of a bar in which one harmony sounds: a struck chord, or notes that ring together.</summary>
internal sealed class Segment
{
    public required Beats Start { get; init; }

    public Beats End { get; set; }

    public string? Shape { get; init; }

    public List<SoundedNote> Notes { get; } = [];

    public PitchClassSet Set { get; private set; }

    /// <summary>The most notes struck at once.</summary>
    public int MostStruck { get; set; }

    /// <summary>True when notes came one after another and rang on.</summary>
    public bool IsBroken { get; set; }

    public bool IsAccented { get; private set; }

    /// <summary>True when a bass strand goes on below the tune: two voices, each with its own lengths.</summary>
    public bool HasBassStrand { get; private set; }

    /// <summary>True when the bass strand has two notes here, the lowest note and its fifth.</summary>
    public bool BassGoesToFifth
    {
        get
        {
            var bass = default(PitchClassSet);
            foreach (var note in Notes)
            {
                if (note.Strand == StrandKind.Bass) bass = bass.With(note.Note.Sounding.PitchClass);
            }
            return Lowest.Strand == StrandKind.Bass && bass == PitchClassSet.Of(0, 7).Up(Lowest.Note.Sounding.PitchClass);
        }
    }

    public bool IsPalmMuted { get; private set; } = true;

    /// <summary>The names; null until named, and for what is no chord.</summary>
    public ChordNaming? Naming { get; set; }

    public ChordReading? Best => Naming is { Candidates.Length: > 0 } ? Naming.Candidates[0] : null;

    /// <summary>The lowest note; there is one as soon as a note has been added.</summary>
    public SoundedNote Lowest { get; private set; } = null!;

    public double Length => (End - Start).ToDouble();

    /// <summary>How long its name stays the same, from the first stretch of that name on.</summary>
    public double RunLength { get; set; }

    /// <summary>How far into the next bar it rings on below what is played there, in quarter notes from that bar's start.</summary>
    public Beats RingsOn { get; set; }

    public void Add(SoundedNote note)
    {
        if (Notes.Count == 0 || note.Midi < Lowest.Midi) Lowest = note;
        Notes.Add(note);
        Set = Set.With(note.Note.Sounding.PitchClass);
        IsAccented |= note.Note.IsAccented;
        HasBassStrand |= note.Strand == StrandKind.Bass;
        IsPalmMuted &= note.Note.IsPalmMuted;
        if (note.End > End) End = note.End;
    }

    /// <summary>True when one of its notes still sounds at a time.</summary>
    public bool SoundsAt(Beats time)
    {
        foreach (var note in Notes)
        {
            if (note.End > time) return true;
        }
        return false;
    }

    /// <summary>The heights of its notes, without those pitch classes that are not in <paramref name="kept"/>.</summary>
    public Height[] Heights(PitchClassSet kept)
    {
        var heights = new Height[Notes.Count];
        var count = 0;
        foreach (var note in Notes)
        {
            if (kept.Contains(note.Note.Sounding.PitchClass)) heights[count++] = note.Note.Sounding;
        }
        return count == heights.Length ? heights : heights[..count];
    }

    /// <summary>The pitch class of some that sounds least, the bass apart, and its part of all sounding time.</summary>
    public (int PitchClass, double Share) Weakest(PitchClassSet among)
    {
        Span<double> weights = stackalloc double[12];
        weights.Clear();
        var total = 0.0;
        foreach (var note in Notes)
        {
            // In two voices a note of the tune says as much as its written value, however long it rings on beside the next.
            var length = (Beats.Min(HasBassStrand ? note.WrittenEnd : note.End, End) - note.Start).ToDouble();
            // What is struck with the bass and held for a beat is meant.
            var isMeant = HasBassStrand && note.Start == Start && note.WrittenEnd - note.Start >= Beats.Quarter;
            weights[note.Note.Sounding.PitchClass] += isMeant ? double.PositiveInfinity : length;
            total += length;
        }
        var weakest = -1;
        // From the bass up, so that equal weights are chosen between alike when everything is transposed.
        for (var above = 1; above < 12; above++)
        {
            var pitchClass = (Lowest.Note.Sounding.PitchClass + above) % 12;
            if (among.Contains(pitchClass) && (weakest < 0 || weights[pitchClass] < weights[weakest])) weakest = pitchClass;
        }
        return weakest < 0 || total <= 0 ? (-1, 1) : (weakest, weights[weakest] / total);
    }
}
