using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lessons;

/// <summary>The words of a road map's rule, with the clauses that say where and when taken off: <c>in bars 1-4</c>, <c>on beat 3</c>, <c>on strings 1-4</c>.</summary>
internal sealed class RuleClauses
{
    private const int MostBars = 9999;

    private RuleClauses(SettingSyntax rule) => (Rule, Words) = (rule, SheetWord.From(rule.Values));

    public SettingSyntax Rule { get; }

    /// <summary>What is left: what the rule is about.</summary>
    public ImmutableArray<SheetWord> Words { get; private set; }

    public StretchBars? Bars { get; private set; }

    public int? Beat { get; private set; }

    public (StringNumber Highest, StringNumber Lowest)? Strings { get; private set; }

    /// <summary>True when a clause makes no sense, which has been reported.</summary>
    public bool IsBroken { get; private set; }

    public TextSpan Span => Rule.Span;

    /// <param name="rule">A line of the block.</param>
    /// <param name="strings">How many strings the neck with the most has.</param>
    /// <param name="problems">Where findings go.</param>
    public static RuleClauses Read(SettingSyntax rule, int strings, DiagnosticBag problems)
    {
        var read = new RuleClauses(rule);
        read.TakeBars(problems);
        read.TakeBeat(problems);
        read.TakeStrings(strings, problems);
        return read;
    }

    /// <summary>The words between commas.</summary>
    public static IEnumerable<ImmutableArray<SheetWord>> Items(ImmutableArray<SheetWord> words)
    {
        var start = 0;
        for (var i = 0; i <= words.Length; i++)
        {
            if (i < words.Length && words[i].Text != ",") continue;
            if (i > start) yield return words[start..i];
            start = i + 1;
        }
    }

    public static TextSpan SpanOf(ImmutableArray<SheetWord> words) => TextSpan.FromBounds(words[0].Span.Start, words[^1].Span.End);

    /// <summary>String numbers such as <c>1-4</c> or <c>3</c>; null when they are none of the neck's.</summary>
    public static (StringNumber Highest, StringNumber Lowest)? StringsOf(string text, int strings)
    {
        var numbers = text.Split('-').Select(n => Numerals.Of(n) ?? 0).ToArray();
        if (numbers.Length > 2 || !numbers.All(n => n >= 1 && n <= strings)) return null;
        return (new StringNumber(numbers.Min()), new StringNumber(numbers.Max()));
    }

    // "in bar 4", "in bars 1-2, 6", "in last bar", "in last 2 bars", at the rule's end.
    private void TakeBars(DiagnosticBag problems)
    {
        var at = LastIndexOf("in", "bar", "bars", "last");
        if (at < 0) return;
        var clause = Words[at..];
        Words = Words[..at];
        Bars = clause[1].Is("last") ? FinalBars(clause[2..]) : NumberedBars(clause[2..]);
        if (Bars is not null) return;
        IsBroken = true;
        problems.Add(RoadMapProblems.NoBars(SpanOf(clause)));
    }

    private static StretchBars? FinalBars(ImmutableArray<SheetWord> words) => words switch
    {
        [var bar] when bar.Is("bar") => StretchBars.Final(1),
        [var number, var bars] when bars.Is("bars") && Numerals.Of(number.Text) is >= 1 and <= MostBars and var count => StretchBars.Final(count),
        _ => null,
    };

    private static StretchBars? NumberedBars(ImmutableArray<SheetWord> words)
    {
        var ranges = new List<StretchRange>();
        foreach (var item in Items(words))
        {
            var numbers = item.Length == 1 ? item[0].Text.Split('-').Select(n => Numerals.Of(n) ?? 0).ToArray() : [];
            if (numbers.Length is not (1 or 2) || numbers.Any(n => n is < 1 or > MostBars) || numbers[0] > numbers[^1]) return null;
            ranges.Add(new StretchRange(numbers[0], numbers[^1]));
        }
        return ranges.Count == 0 ? null : new StretchBars(ranges.ToValueList());
    }

    private void TakeBeat(DiagnosticBag problems)
    {
        var at = LastIndexOf("on", "beat");
        if (at < 0) return;
        Beat = at + 2 < Words.Length && Numerals.Of(Words[at + 2].Text) is >= 1 and <= 64 and var beat ? beat : null;
        if (Beat is null) problems.Add(RoadMapProblems.NoAim(Span));
        IsBroken |= Beat is null;
        Words = Words.RemoveRange(at, Math.Min(3, Words.Length - at));
    }

    private void TakeStrings(int strings, DiagnosticBag problems)
    {
        var at = LastIndexOf("on", "string", "strings");
        if (at < 0) return;
        Strings = at + 2 < Words.Length ? StringsOf(Words[at + 2].Text, strings) : null;
        if (Strings is null) problems.Add(RoadMapProblems.NoStrings(Span, strings));
        IsBroken |= Strings is null;
        Words = Words.RemoveRange(at, Math.Min(3, Words.Length - at));
    }

    private int LastIndexOf(string word, params ReadOnlySpan<string> next)
    {
        for (var i = Words.Length - 2; i >= 0; i--)
        {
            if (!Words[i].Is(word)) continue;
            foreach (var follower in next)
            {
                if (Words[i + 1].Is(follower)) return i;
            }
        }
        return -1;
    }
}
