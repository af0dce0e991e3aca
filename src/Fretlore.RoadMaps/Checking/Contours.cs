using Fretlore.Score;

namespace Fretlore.RoadMaps.Checking;

/// <summary>Whether landmarks go the way of a contour.</summary>
/// <remarks>
/// The state of a contour on its way: where it stands and what may still come. <see cref="Contour.Arch"/> and <see cref="Contour.Valley"/> turn once,
/// <see cref="Contour.Wave"/> at every landmark.
/// </remarks>
internal readonly record struct ContourState
{
    // A fourth, in semitones.
    private const int LevelRange = 5;

    private ContourState(int first, int last, int phase) => (First, Last, Phase) = (first, last, phase);

    public int First { get; }

    public int Last { get; }

    /// <summary>True when a landmark has been off the first one's height.</summary>
    public bool HasMoved => Phase > 0;

    // Rising, falling: 1 once it has moved. Arch, valley: 1 on the first leg, 2 on the second. Wave: 1 after up, 2 after down.
    private int Phase { get; }

    /// <summary>At the first landmark.</summary>
    public static ContourState At(int height) => new(height, height, 0);

    /// <summary>Only what matters for what may still come.</summary>
    public ContourState Ahead(Contour contour) => contour == Contour.Level ? new ContourState(First, 0, 0) : new ContourState(0, Last, Phase);

    /// <summary>At the next landmark; null when the contour does not go there.</summary>
    public ContourState? To(int height, Contour contour)
    {
        var way = Math.Sign(height - Last);
        int? phase = contour switch
        {
            Contour.Rising => way < 0 ? null : Math.Max(Phase, way),
            Contour.Falling => way > 0 ? null : Math.Max(Phase, -way),
            Contour.Arch => Leg(way),
            Contour.Valley => Leg(-way),
            Contour.Level => Math.Abs(height - First) > LevelRange ? null : 0,
            _ => way == 0 || (Phase == 1 && way > 0) || (Phase == 2 && way < 0) ? null : way > 0 ? 1 : 2,
        };
        return phase is { } next ? new ContourState(First, height, next) : null;
    }

    /// <summary>True when the contour may end here.</summary>
    public bool IsComplete(Contour contour) => contour switch
    {
        Contour.Rising or Contour.Falling => Phase == 1,
        Contour.Arch or Contour.Valley => Phase == 2,
        Contour.Level => true,
        _ => Phase > 0,
    };

    // Outwards first, then back; standing still is on either leg.
    private int? Leg(int outwards) => (Phase, outwards) switch
    {
        (0, 0) => 0,
        (0, 1) => 1,
        (0, _) => null,
        (1, -1) => 2,
        (1, _) => 1,
        (_, 1) => null,
        _ => 2,
    };
}
