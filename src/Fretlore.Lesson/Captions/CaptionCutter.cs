using Fretlore.Music;

namespace Fretlore.Lesson.Captions;

/// <summary>Cuts spoken sentences into captions of two lines, at the ends of sentences and phrases where it can.</summary>
/// <remarks>Exact: of all ways to cut, the one with the least penalty is taken, by dynamic programming over the words.</remarks>
internal static class CaptionCutter
{
    // By judgement: a caption more is better than a cut within a phrase, and worse than one at a comma.
    private const int Each = 3, AtComma = 1, BeforeThen = 2, WithinPhrase = 5, VeryShort = 2, LineWithinPhrase = 2;

    private const int VeryShortCharacters = 14;

    // Characters of difference between two lines that one point of a better break is worth.
    private const int Unevenness = 4;

    /// <summary>The words of one caption, from one index up to another, on their lines.</summary>
    internal readonly record struct Cut(int First, int End, ValueList<string> Lines);

    /// <summary>The words of sentences, none longer than a line.</summary>
    public static string[] Words(IEnumerable<string> sentences) =>
        [.. sentences.SelectMany(s => s.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).SelectMany(w => w.Chunk(Caption.MostCharacters).Select(c => new string(c)))];

    public static IReadOnlyList<Cut> Of(string[] words)
    {
        var best = new int[words.Length + 1];
        var from = new int[words.Length + 1];
        Array.Fill(best, int.MaxValue);
        best[0] = 0;
        for (var end = 1; end <= words.Length; end++)
        {
            for (var first = end - 1; first >= 0 && Length(words, first, end) <= 2 * Caption.MostCharacters + 1; first--)
            {
                if (best[first] == int.MaxValue || Lines(words, first, end) is not { } lines) continue;
                var penalty = best[first] + Each + Break(words, end) + (Length(words, first, end) <= VeryShortCharacters ? VeryShort : 0);
                if (lines.Count == 2 && Break(words, first + lines[0].Count(c => c == ' ') + 1) == WithinPhrase) penalty += LineWithinPhrase;
                if (penalty < best[end]) (best[end], from[end]) = (penalty, first);
            }
        }
        var cuts = new List<Cut>();
        for (var end = words.Length; end > 0; end = from[end]) cuts.Add(new Cut(from[end], end, Lines(words, from[end], end)!.Value));
        cuts.Reverse();
        return cuts;
    }

    private static int Break(string[] words, int end)
    {
        if (end == words.Length || words[end - 1][^1] is '.' or '!' or '?') return 0;
        // A colon with a single word after it holds them together: "Sixth string: E."
        if (words[end - 1][^1] == ':' && words[end][^1] is '.' or '!' or '?') return WithinPhrase;
        if (words[end - 1][^1] is ',' or ':' or ';') return AtComma;
        return words[end] is "then" or "and" ? BeforeThen : WithinPhrase;
    }

    private static int Length(string[] words, int first, int end)
    {
        var length = end - first - 1;
        for (var i = first; i < end; i++) length += words[i].Length;
        return length;
    }

    // One line where it fits; else two of nearly the same length, broken at the end of a sentence or phrase where that is not far.
    private static ValueList<string>? Lines(string[] words, int first, int end)
    {
        if (Length(words, first, end) <= Caption.MostCharacters) return [string.Join(' ', words[first..end])];
        var (at, least) = (-1, int.MaxValue);
        for (var i = first + 1; i < end; i++)
        {
            var (upper, lower) = (Length(words, first, i), Length(words, i, end));
            if (upper > Caption.MostCharacters || lower > Caption.MostCharacters) continue;
            var uneven = Math.Abs(upper - lower) + Unevenness * Break(words, i);
            if (uneven < least) (at, least) = (i, uneven);
        }
        return at < 0 ? null : [string.Join(' ', words[first..at]), string.Join(' ', words[at..end])];
    }
}
