using System.Collections.Immutable;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Score;
using Fretlore.Syntax;

namespace Fretlore.Binding.Lessons;

/// <summary>Reads what a lesson points at: <c>furnace, Rise bars 1-2 of lead</c>.</summary>
internal sealed class TaughtReader(DiagnosticBag problems, HashSet<string> known, IReadOnlyList<string> parts)
{
    /// <summary>A name with more words than this is not looked for.</summary>
    private const int MostWordsInName = 8;

    private readonly ImmutableArray<(Taught, TextSpan)>.Builder read = ImmutableArray.CreateBuilder<(Taught, TextSpan)>();

    /// <summary>Everything read so far, with its place.</summary>
    public ImmutableArray<(Taught What, TextSpan Span)> Read => read.ToImmutable();

    /// <summary>What the words name; what can't be found is reported and left out.</summary>
    /// <param name="words">With commas or blanks between names.</param>
    /// <param name="mayBeSong">True where <c>bars 1-8</c> without a name are bars of the song.</param>
    public List<Taught> Of(ImmutableArray<SheetWord> words, bool mayBeSong = false)
    {
        var found = new List<Taught>();
        for (var i = 0; i < words.Length;)
        {
            if (words[i].Text == ",")
            {
                i++;
                continue;
            }
            var start = i;
            var name = mayBeSong && start == 0 && IsBars(words, i) ? "" : Name(words, ref i);
            var taught = new Taught(name ?? "", Bars(words, ref i), Part(words, ref i));
            if (name is null) continue;
            found.Add(taught);
            read.Add((taught, TextSpan.FromBounds(words[start].Span.Start, words[i - 1].Span.End)));
        }
        return found;
    }

    // Names stand between commas or blanks; a section's name may have blanks, so the longest known one is taken.
    private string? Name(ImmutableArray<SheetWord> words, ref int i)
    {
        var end = Math.Min(words.Length, i + MostWordsInName);
        while (end > i + 1 && !known.Contains(SheetWord.Join(words[i..end]))) end--;
        var name = SheetWord.Join(words[i..end]);
        if (!known.Contains(name))
        {
            problems.Add(LessonProblems.UnknownToTeach(words[i].Span, name, known));
            name = null;
        }
        i = end;
        return name;
    }

    private static bool IsBars(ImmutableArray<SheetWord> words, int i) => i < words.Length && (words[i].Is("bars") || words[i].Is("bar"));

    // bars 3-4, bar 7
    private BarRange? Bars(ImmutableArray<SheetWord> words, ref int i)
    {
        if (!IsBars(words, i)) return null;
        var word = words[i++];
        var numbers = i < words.Length ? words[i].Text.Split('-').Select(Numerals.Of).ToArray() : [];
        if (numbers.Length > 0 && numbers.All(n => n is not null)) i++;
        if (numbers is [{ } first] || numbers is [{ } _, { } _])
        {
            first = numbers[0]!.Value;
            var last = numbers[^1]!.Value;
            if (last >= first) return new BarRange(first, last);
        }
        problems.Add(LessonProblems.NoBars(word.Span));
        return null;
    }

    private string? Part(ImmutableArray<SheetWord> words, ref int i)
    {
        if (i >= words.Length || !words[i].Is("of")) return null;
        var of = words[i++];
        if (i < words.Length && parts.Contains(words[i].Text)) return words[i++].Text;
        var name = i < words.Length ? words[i++] : of;
        problems.Add(LessonProblems.NoPart(name.Span, name.Text, parts));
        return null;
    }
}
