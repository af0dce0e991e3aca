using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Output;

/// <summary>How long the dashes and gaps of a broken line are, in staff spaces.</summary>
/// <remarks>Dots are dashes without length under round ends. Our own choice, made by eye at a staff space of 1.75 mm.</remarks>
internal readonly record struct DashPattern(double Dash, double Gap)
{
    /// <summary>Null for an unbroken line.</summary>
    public static DashPattern? Of(Line line) => line.Style switch
    {
        LineStyle.Dashed => new DashPattern(0.8, 0.6),
        LineStyle.Dotted => new DashPattern(0, Math.Max(0.45, 2.5 * line.Thickness)),
        _ => null,
    };
}
