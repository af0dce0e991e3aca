namespace Fretlore.Sound;

/// <summary>Finds the name that a mistyped one was probably meant to be.</summary>
internal static class Likeness
{
    private const int LongestName = 40;

    /// <summary>The name that shares most letters in order, when it shares more than half; null when none does.</summary>
    public static string? Nearest(string typed, IEnumerable<string> names)
    {
        var best = names.Select(name => (Name: name, Shared: Shared(typed, name), Of: Math.Max(name.Length, typed.Length)))
            .MaxBy(candidate => candidate.Shared / (double)candidate.Of);
        return best.Shared * 2 > best.Of ? best.Name : null;
    }

    // The longest common subsequence.
    private static int Shared(string a, string b)
    {
        var lengths = new int[Math.Min(a.Length, LongestName) + 1, Math.Min(b.Length, LongestName) + 1];
        for (var i = 1; i < lengths.GetLength(0); i++)
        {
            for (var j = 1; j < lengths.GetLength(1); j++)
            {
                lengths[i, j] = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1])
                    ? lengths[i - 1, j - 1] + 1
                    : Math.Max(lengths[i - 1, j], lengths[i, j - 1]);
            }
        }
        return lengths[lengths.GetLength(0) - 1, lengths.GetLength(1) - 1];
    }
}
