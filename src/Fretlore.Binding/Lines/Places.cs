using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>Selected strings, low to high whatever the order typed.</summary>
internal static class Places
{
    public static ImmutableArray<StringNumber> All(Neck neck) =>
        [.. Enumerable.Range(1, neck.StringCount).Reverse().Select(n => new StringNumber(n))];

    /// <summary>Reads <c>@654</c> or <c>@6-4</c>; strings the neck has not are reported and left out.</summary>
    public static ImmutableArray<StringNumber> Read(WhereSyntax where, Neck neck, DiagnosticBag problems)
    {
        if (where.Strings.IsMissing) return [];
        if (where.To is { IsMissing: false } to)
        {
            if (Numerals.Of(where.Strings) is not { } first || Numerals.Of(to) is not { } last) return [];
            var (low, high) = (Math.Max(first, last), Math.Min(first, last));
            if (low > neck.StringCount || high < 1)
            {
                problems.Add(PlaceProblems.NoSuchString(where.Span, high < 1 ? high : low, neck));
                return [];
            }
            return [.. Enumerable.Range(high, low - high + 1).Reverse().Select(n => new StringNumber(n))];
        }
        return ReadDigits(where.Strings, where.Span, neck, problems);
    }

    /// <summary>Reads one string a digit, such as <c>52</c>.</summary>
    public static ImmutableArray<StringNumber> ReadDigits(SyntaxToken digits, TextSpan span, Neck neck, DiagnosticBag problems)
    {
        var selected = new SortedSet<int>();
        foreach (var digit in digits.Text)
        {
            var number = digit - '0';
            if (number < 1 || number > neck.StringCount) problems.Add(PlaceProblems.NoSuchString(span, number, neck));
            else if (!selected.Add(number)) problems.Add(PlaceProblems.TwoNotesOnOneString(span, number));
        }
        return [.. selected.Reverse().Select(n => new StringNumber(n))];
    }
}
