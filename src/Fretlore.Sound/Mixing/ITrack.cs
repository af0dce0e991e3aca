namespace Fretlore.Sound.Mixing;

/// <summary>Something that is heard in a mix, rendered once from its start to its end.</summary>
internal interface ITrack
{
    /// <summary>All that its sound depends on, to be compared by value.</summary>
    object Content { get; }

    /// <summary>Adds the next samples to both sides.</summary>
    /// <param name="from">The first of them; where the last call ended.</param>
    void Render(long from, Span<double> left, Span<double> right);
}
