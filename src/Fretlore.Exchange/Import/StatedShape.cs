using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>A shape that a file draws at a place of a part.</summary>
/// <param name="Bar">Index of the bar.</param>
/// <param name="At">From the bar's start.</param>
/// <param name="Shape">Its frets, counted from the capo.</param>
/// <param name="Fingers">The finger of each string, low to high; empty when it says none.</param>
internal sealed record StatedShape(int Bar, Beats At, Shape Shape, ValueList<Finger?> Fingers)
{
    /// <summary>The name the file gives it, or null.</summary>
    public string? Name { get; init; }

    /// <summary>The chord symbol it stands under, or null.</summary>
    public string? Symbol { get; init; }

    public bool HasBarreWithoutFinger { get; init; }
}
