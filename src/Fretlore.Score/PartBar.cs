using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>What one part plays in one bar.</summary>
/// <param name="Neck">The neck in this bar (a capo can move).</param>
/// <param name="Strands">The main strand first; empty when the part rests for the whole bar.</param>
public sealed record PartBar(Neck Neck, ValueList<Strand> Strands)
{
    /// <summary>1 or 2 when written as "the last bar (or two) again"; 0 otherwise. The strands hold the music all the same.</summary>
    public int Repeats { get; init; }

    /// <summary>The road map that says what is played here, when the bar is a free stretch.</summary>
    public string? RoadMap { get; init; }

    public bool IsRest => Strands.Count == 0;

    public IEnumerable<Note> Notes => Strands.SelectMany(s => s.Events).SelectMany(e => e.Graces.Concat(e.Notes));
}
