using System.Collections.Immutable;

namespace Fretlore.Sound.Rigs;

/// <summary>What a sheet can ask for after <c>sound</c>: names of rigs by what they do, and other words for them.</summary>
public static class RigNames
{
    /// <summary>Each rig once, by its own name.</summary>
    public static ImmutableArray<string> All => [.. RigTable.All.Select(rig => rig.Name)];

    public static bool Has(string name) => RigTable.Find(name) is not null;

    /// <summary>The rig a mistyped name was probably meant to be; null when none is near.</summary>
    /// <remarks>The names are few and unlike each other: the one that shares most letters in order is near enough when it shares more than half.</remarks>
    public static string? NearestTo(string name)
    {
        var best = RigTable.All.SelectMany(rig => rig.AlsoCalled.Append(rig.Name).Select(word => (rig.Name, Shared: Shared(name, word), word.Length)))
            .MaxBy(r => r.Shared / (double)Math.Max(r.Length, name.Length));
        return best.Shared * 2 > Math.Max(best.Length, name.Length) ? best.Name : null;
    }

    private static int Shared(string a, string b)
    {
        var lengths = new int[Math.Min(a.Length, 40) + 1, b.Length + 1];
        for (var i = 1; i < lengths.GetLength(0); i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                lengths[i, j] = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1])
                    ? lengths[i - 1, j - 1] + 1
                    : Math.Max(lengths[i - 1, j], lengths[i, j - 1]);
            }
        }
        return lengths[lengths.GetLength(0) - 1, b.Length];
    }
}
