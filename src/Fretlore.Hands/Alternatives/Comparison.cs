using System.Collections.Immutable;
using Fretlore.Hands.Grips;
using Fretlore.Hands.Plans;

namespace Fretlore.Hands.Alternatives;

/// <summary>Says what one way of playing gains on another, and what it costs.</summary>
internal static class Comparison
{
    // What is named is at least a third less, and by as much as one hard moment is worth.
    private const double LeastShare = 2 / 3.0;
    private const double LeastPoints = 0.75;

    private static readonly (Effort[] Efforts, string Name)[] Kinds =
    [
        ([Effort.Stretch], "stretching"),
        ([Effort.Cramp], "squeezing"),
        ([Effort.Barre], "barring"),
        ([Effort.Bend], "bending with weak fingers"),
        ([Effort.Shift, Effort.Hurry], "shifting"),
        ([Effort.Hop], "hopping of one finger from string to string"),
        ([Effort.Legato], "slurring against the hand"),
        ([Effort.LostNote], "cutting off of what should ring"),
    ];

    /// <summary>What <paramref name="load"/> has less of than <paramref name="than"/>: "no stretching", "less shifting".</summary>
    public static ImmutableArray<string> Less(HandLoad load, HandLoad than)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        foreach (var (efforts, name) in Kinds)
        {
            var (here, there) = (efforts.Sum(e => load.ByEffort[(int)e]), efforts.Sum(e => than.ByEffort[(int)e]));
            if (there - here >= LeastPoints && here <= LeastShare * there) said.Add(here == 0 ? $"no {name}" : $"less {name}");
        }
        return said.ToImmutable();
    }

    /// <summary>What it has more of.</summary>
    public static IEnumerable<string> More(HandLoad load, HandLoad than) =>
        Less(than, load).Select(said => "more " + said[(said.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
}
