using System.Collections.Immutable;
using System.Numerics;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lines;

/// <summary>Selected strings, low to high whatever the order typed.</summary>
internal static class Places
{
    public static ImmutableArray<StringNumber> All(Neck neck) =>
        Between(neck.StringCount, 1);

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
            return Between(low, high);
        }
        return ReadDigits(where.Strings, where.Span, neck, problems);
    }

    /// <summary>Reads one string a digit, such as <c>52</c>.</summary>
    public static ImmutableArray<StringNumber> ReadDigits(SyntaxToken digits, TextSpan span, Neck neck, DiagnosticBag problems)
    {
        var selected = 0;
        foreach (var digit in digits.Text)
        {
            var number = digit - '0';
            if (number < 1 || number > neck.StringCount) problems.Add(PlaceProblems.NoSuchString(span, number, neck));
            else if ((selected >> number & 1) != 0) problems.Add(PlaceProblems.TwoNotesOnOneString(span, number));
            else selected |= 1 << number;
        }
        var strings = ImmutableArray.CreateBuilder<StringNumber>(BitOperations.PopCount((uint)selected));
        for (var number = 9; number >= 1; number--)
        {
            if ((selected >> number & 1) != 0) strings.Add(new StringNumber(number));
        }
        return strings.MoveToImmutable();
    }

    private static ImmutableArray<StringNumber> Between(int low, int high)
    {
        var strings = ImmutableArray.CreateBuilder<StringNumber>(low - high + 1);
        for (var number = low; number >= high; number--) strings.Add(new StringNumber(number));
        return strings.MoveToImmutable();
    }
}
