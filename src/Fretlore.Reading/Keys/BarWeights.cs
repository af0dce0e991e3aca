using Fretlore.Reading.Phrases;
using Fretlore.Score;

namespace Fretlore.Reading.Keys;

/// <summary>What a stretch of bars says about its key: how much of each note sounds, what is lowest, what is first and last.</summary>
internal sealed class BarWeights
{
    private const double FirstBass = 0.12;
    private const double LastBass = 0.2;
    private const double BassShare = 0.3;

    internal NoteWeights Notes { get; } = new();

    internal NoteWeights Bass { get; } = new();

    /// <summary>Pitch class of the lowest note of the first moment, and of the last; -1 when nothing sounds.</summary>
    internal int First { get; private set; } = -1;

    internal int Last { get; private set; } = -1;

    internal void Add(PartBar bar)
    {
        foreach (var strand in bar.Strands)
        {
            foreach (var item in strand.Events) Add(item);
        }
    }

    /// <summary>The keys it may be in, best first.</summary>
    internal IReadOnlyList<KeyReading> Find()
    {
        if (First >= 0)
        {
            Notes.AddRootEvidence(First, FirstBass);
            Notes.AddRootEvidence(Last, LastBass);
            foreach (var pitchClass in Bass.Set) Notes.AddRootEvidence(pitchClass, BassShare * Bass.Share(pitchClass));
        }
        return KeyFinder.Find(Notes);
    }

    private void Add(Event item)
    {
        var length = item.Duration.ToDouble();
        Note? lowest = null;
        foreach (var note in item.Notes)
        {
            if (note.IsDead) continue;
            HeardPitch.AddTo(Notes, note, length);
            lowest ??= note;
        }
        if (lowest is null) return;
        Bass.Add(lowest.Sounding.PitchClass, length);
        if (First < 0) First = lowest.Sounding.PitchClass;
        Last = HeardPitch.End(lowest).PitchClass;
    }
}
