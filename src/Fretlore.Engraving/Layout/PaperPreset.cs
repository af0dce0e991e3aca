using System.Collections.Immutable;

namespace Fretlore.Engraving.Layout;

/// <summary>A paper or screen by its name, with the size music is set at on it.</summary>
/// <param name="Name">As asked for: <c>a4</c>, <c>letter</c>, <c>phone</c>, <c>slide</c>.</param>
/// <param name="Paper">Its size and margins.</param>
/// <param name="StaffSpace">Millimetres between two staff lines.</param>
/// <param name="LeastShare">The share of it that music may be set at where that saves a page, or fills pages that are a third empty.</param>
public sealed record PaperPreset(string Name, Paper Paper, double StaffSpace, double LeastShare = 0.9)
{
    public static ImmutableArray<PaperPreset> All { get; } =
    [
        new("a4", Paper.A4, 1.6),
        new("letter", Paper.Letter, 1.6),
        new("phone", Paper.Phone, 1.5),
        new("slide", Paper.Slide, 2.1, 0.75),
    ];

    public static PaperPreset A4 => All[0];

    /// <summary>The preset of a name; null when there is none.</summary>
    public static PaperPreset? Find(string name) => All.FirstOrDefault(p => p.Name == name);
}
