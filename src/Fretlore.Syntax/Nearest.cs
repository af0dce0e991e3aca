namespace Fretlore.Syntax;

/// <summary>The known word a mistyped one was probably meant to be.</summary>
public static class Nearest
{
    private const int LongestWord = 40;

    /// <summary>
    /// The candidate with the fewest typing slips (a letter added, dropped, changed, or two swapped) from <paramref name="word"/>:
    /// one slip in a word of up to four letters, two in a longer one, three from nine letters on; null when none is that near.
    /// </summary>
    public static string? To(string word, IEnumerable<string> candidates)
    {
        if (word.Length > LongestWord) return null;
        var most = word.Length switch { < 2 => 0, <= 4 => 1, <= 8 => 2, _ => 3 };
        string? best = null;
        foreach (var candidate in candidates)
        {
            if (candidate.Length > LongestWord || Math.Abs(candidate.Length - word.Length) > most) continue;
            var slips = Slips(word, candidate);
            if (slips > most) continue;
            (best, most) = (candidate, slips - 1);
        }
        return best;
    }

    /// <summary>Optimal string alignment distance, letters compared without case.</summary>
    private static int Slips(string a, string b)
    {
        Span<int> beforeLast = stackalloc int[b.Length + 1];
        Span<int> last = stackalloc int[b.Length + 1];
        Span<int> row = stackalloc int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++) last[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var same = Same(a[i - 1], b[j - 1]);
                row[j] = Math.Min(Math.Min(row[j - 1], last[j]) + 1, last[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1])) row[j] = Math.Min(row[j], beforeLast[j - 2] + 1);
            }
            last.CopyTo(beforeLast);
            row.CopyTo(last);
        }
        return last[b.Length];
    }

    private static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
