using Fretlore.RoadMaps.Search;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Takes;

/// <summary>A note of a take: its slot, its place, and how the hand plays it.</summary>
internal sealed record PlayedNote(Slot Slot, PlaceNode Place)
{
    public Attack Attack { get; init; }

    public GlideIn GlideIn { get; init; }

    public bool Vibrato { get; init; }
}
