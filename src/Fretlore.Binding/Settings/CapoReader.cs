using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Guitar;
using Fretlore.Syntax;

namespace Fretlore.Binding.Settings;

/// <summary>Reads where a capo is: <c>2</c>, <c>2 on 5-3</c>, <c>2 on 543</c>, <c>2 on 4</c>, <c>off</c>.</summary>
internal static class CapoReader
{
    private const int HighestFret = 12;

    public static Capo? Read(ImmutableArray<SheetWord> words, TextSpan span, DiagnosticBag problems)
    {
        if (words.Length == 1 && (words[0].Is("off") || words[0].Is("none"))) return Capo.Off;
        if (words.Length > 0 && Numerals.Of(words[0].Text) is { } fret and <= HighestFret)
        {
            if (words.Length == 1) return Capo.At(fret);
            if (words.Length > 2 && words[1].Is("on") && fret > 0) return Over(fret, string.Concat(words.Skip(2).Select(w => w.Text)), span, problems);
        }
        problems.Add(SettingProblems.NoCapo(span, SheetWord.Join(words), HighestFret));
        return null;
    }

    /// <summary>Finds a partial capo on strings that there are not, or on all there are.</summary>
    public static void Check(Capo capo, Tuning tuning, TextSpan span, DiagnosticBag problems)
    {
        if (!capo.IsPartial) return;
        if (!tuning.Has(capo.Lowest)) problems.Add(SettingProblems.CapoOnMissingString(span, capo, tuning.StringCount));
        else if (capo.Highest.Value == 1 && capo.Lowest.Value == tuning.StringCount) problems.Add(SettingProblems.CapoOnAllStrings(span, capo));
    }

    // A range in either order, or each string a digit, as places are written.
    private static Capo? Over(int fret, string strings, TextSpan span, DiagnosticBag problems)
    {
        var ends = strings.Split('-');
        int[] covered = ends.Length == 2
            ? Numerals.Of(ends[0]) is { } first and > 0 and <= 12 && Numerals.Of(ends[1]) is { } last and > 0 and <= 12 ? [first, last] : []
            : ends.Length == 1 && Numerals.Of(strings) is not null ? [.. strings.Select(c => c - '0').Order()] : [];
        var isRange = ends.Length == 2;
        if (covered.Length > 0 && covered[0] > 0 && (isRange || Enumerable.Range(covered[0], covered.Length).SequenceEqual(covered)))
            return Capo.Over(fret, new StringNumber(covered[0]), new StringNumber(covered[^1]));
        problems.Add(SettingProblems.CapoNeedsNeighbours(span, strings));
        return null;
    }
}
