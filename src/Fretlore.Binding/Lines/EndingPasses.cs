using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>Which ending each pass of a repeat takes.</summary>
internal static class EndingPasses
{
    private const int MostPasses = 10_000;

    /// <summary>For each pass the index of its ending, or -1; empty when the repeat has no endings.</summary>
    public static ImmutableArray<int> Read(RepeatSyntax repeat, int count, DiagnosticBag problems)
    {
        if (repeat.Endings.Length == 0 || count is < 1 or > MostPasses) return [];
        var endings = Enumerable.Repeat(-1, count).ToArray();
        for (var e = 0; e < repeat.Endings.Length; e++)
        {
            foreach (var (pass, token) in Passes(repeat.Endings[e].Passes))
            {
                if (pass < 1 || pass > count) problems.Add(FormProblems.EndingOfNoPass(token.Span, pass, count));
                else if (endings[pass - 1] >= 0) problems.Add(FormProblems.TwoEndingsOfOnePass(token.Span, pass));
                else endings[pass - 1] = e;
            }
        }
        var without = Array.IndexOf(endings, -1);
        if (without >= 0) problems.Add(FormProblems.PassWithoutEnding(repeat.Word.Span, without + 1));
        return [.. endings];
    }

    // Numbers apart or with a dash between them; a range wider than any repeat is cut.
    private static IEnumerable<(int Pass, SyntaxToken Token)> Passes(ImmutableArray<SyntaxToken> tokens)
    {
        var before = (int?)null;
        var dash = false;
        foreach (var token in tokens)
        {
            if (token.Text is "-") dash = before is not null;
            else if (Numerals.Of(token) is { } number)
            {
                var first = dash && before is { } start ? start + 1 : number;
                for (var pass = first; pass <= number && pass - first < MostPasses; pass++) yield return (pass, token);
                (before, dash) = (Math.Min(number, MostPasses), false);
            }
        }
    }
}
