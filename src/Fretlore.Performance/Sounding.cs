using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Performance;

/// <summary>A written value of a sounding note.</summary>
internal readonly record struct SoundingValue(Note Note, Spans Spans, Beats Start, Beats End);

/// <summary>A note while its end is not known yet: ties add values, the next note on the string may glide from it or cut it off.</summary>
internal sealed class Sounding(PlayedEvent played, Note note, Beats onset, Beats end, int velocity)
{
    private readonly List<SoundingValue> values = [new SoundingValue(note, played.Event.Spans, onset, end)];

    /// <summary>The event that starts it.</summary>
    public PlayedEvent Played { get; } = played;

    public Note First { get; } = note;

    public Note Last => values[^1].Note;

    public Beats Onset { get; } = onset;

    public Beats End => values[^1].End;

    /// <summary>When it stops; set after all notes of the part are known.</summary>
    public Beats Release { get; set; } = end;

    /// <summary>The event that holds it last; its end decides how long it rings.</summary>
    public PlayedEvent LastPlayed { get; private set; } = played;

    public int Velocity { get; } = velocity;

    public bool IsGrace { get; init; }

    /// <summary>Semitones to the note it glides to on this string; null when it does not.</summary>
    public int? GlideTo { get; set; }

    public IReadOnlyList<SoundingValue> Values => values;

    public bool Holds(Note note) => Last.IsHeldOn && note.Fret == First.Fret;

    public void Hold(PlayedEvent held, Note note)
    {
        values.Add(new SoundingValue(note, held.Event.Spans, held.Start, held.End));
        LastPlayed = held;
    }
}
