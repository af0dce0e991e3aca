using Fretlore.Music;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Search;

/// <summary>A moment that gets a note: what it may be, and what each choice costs before its neighbours are looked at.</summary>
internal sealed class Slot
{
    public required StretchBar Bar { get; init; }

    public required Beats At { get; init; }

    public required Beats Length { get; set; }

    public Tuplet? Tuplet { get; init; }

    /// <summary>True when silence lies before it.</summary>
    public bool FollowsRest { get; set; }

    /// <summary>The written moment that is played here as it stands; null where the search chooses.</summary>
    public LineMoment? Given { get; init; }

    /// <summary>How it must be reached from the note before; several where one note is two targets.</summary>
    public List<Approach> Ways { get; } = [];

    /// <summary>The places it may be played at.</summary>
    public required PlaceNode[] Nodes { get; set; }

    /// <summary>What each of them costs, in bits.</summary>
    public required double[] Costs { get; set; }

    public Beats Start => Bar.Start + At;

    public Beats End => Start + Length;

    public double Seconds => Length.ToDouble() * Bar.SecondsPerQuarter;
}
