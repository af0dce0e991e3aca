using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Stretches;

/// <summary>A moment of a solo at which something is played; held values belong to the moment they hold.</summary>
public sealed record LineMoment
{
    /// <summary>From 1.</summary>
    public required int Bar { get; init; }

    /// <summary>Quarter notes from the bar's start.</summary>
    public required Beats At { get; init; }

    /// <summary>From the stretch's start.</summary>
    public required Beats Start { get; init; }

    /// <summary>With everything that is tied to it.</summary>
    public required Beats Length { get; init; }

    /// <summary>From the low string up; at least one.</summary>
    public required ImmutableArray<Note> Notes { get; init; }

    /// <summary>What is heard of the highest note, one after another: where it is bent to, and where it is let down to. MIDI numbers.</summary>
    public required ImmutableArray<int> Heard { get; init; }

    /// <summary>True when silence lies between this and what came before, or nothing came.</summary>
    public bool FollowsRest { get; init; }

    /// <summary>True when silence follows, or nothing.</summary>
    public bool ComesToRest { get; init; }

    public Beats End => Start + Length;

    /// <summary>The note that sounds highest.</summary>
    public Note Top => Notes.MaxBy(n => n.Sounding.Midi)!;

    /// <summary>The height it arrives at.</summary>
    public int Arrival => Heard[0];

    /// <summary>The height it ends at.</summary>
    public int Final => Heard[^1];

    /// <summary>Pitch classes of all that is heard in it.</summary>
    public IEnumerable<int> PitchClasses => Heard.Concat(Notes.Where(n => n != Top && !n.IsDead).Select(n => n.Sounding.Midi)).Select(h => NoteName.Wrap(h, 12));

    /// <summary>True when it is the same notes at the same places, for the same time.</summary>
    public bool IsSameAs(LineMoment other) => Length == other.Length && HasSamePlacesAs(other);

    public bool HasSamePlacesAs(LineMoment other) => Notes.Length == other.Notes.Length
        && Notes.Zip(other.Notes).All(p => p.First.String == p.Second.String && p.First.Fret == p.Second.Fret && p.First.IsDead == p.Second.IsDead);
}
