using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>A shape that a file draws at a place of a part.</summary>
/// <param name="Bar">Index of the bar.</param>
/// <param name="At">From the bar's start.</param>
/// <param name="Shape">Its frets.</param>
/// <param name="Fingers">The finger of each string, low to high; empty when it says none.</param>
internal sealed record StatedShape(int Bar, Beats At, Shape Shape, ValueList<Finger?> Fingers)
{
    /// <summary>The name the file gives it, or null.</summary>
    public string? Name { get; init; }

    /// <summary>The chord symbol it stands under, or null.</summary>
    public string? Symbol { get; init; }

    public bool HasBarreWithoutFinger { get; init; }

    /// <summary>The shape as it is written under a capo, where the file counts its frets from the open strings.</summary>
    public StatedShape Under(Capo capo) => capo.IsPartial
        ? this with { Shape = new Shape(Shape.LowToHigh.Select((fret, i) => fret is { } at ? capo.Written(new StringNumber(Shape.LowToHigh.Count - i), at.Number) : fret).ToValueList()) }
        : this;
}
