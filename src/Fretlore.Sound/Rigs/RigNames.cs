using System.Collections.Immutable;

namespace Fretlore.Sound.Rigs;

/// <summary>What a sheet can ask for after <c>sound</c>: names of rigs by what they do, and other words for them.</summary>
public static class RigNames
{
    /// <summary>Each rig once, by its own name.</summary>
    public static ImmutableArray<string> All => [.. RigTable.All.Select(rig => rig.Name)];

    public static bool Has(string name) => RigTable.Find(name) is not null;

    /// <summary>The rig a mistyped name was probably meant to be; null when none is near.</summary>
    public static string? NearestTo(string name) =>
        Likeness.Nearest(name, RigTable.All.SelectMany(rig => rig.AlsoCalled.Append(rig.Name))) is { } near ? RigTable.Find(near)!.Name : null;
}
