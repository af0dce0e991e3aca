using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>Which voice of a part a strand is.</summary>
public enum StrandKind
{
    Main,
    Bass,
    Drone,
    Top,
}

/// <summary>One line of events within a bar.</summary>
/// <param name="Kind">The main strand fills its bar; the others start and end where they were written.</param>
/// <param name="Events">In order, without gaps from the first one's start.</param>
public sealed record Strand(StrandKind Kind, ValueList<Event> Events)
{
    public Beats Start => Events.Count > 0 ? Events[0].Start : Beats.Zero;

    public Beats End => Events.Count > 0 ? Events[^1].End : Beats.Zero;
}
