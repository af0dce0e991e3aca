using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Fretlore.Binding.Draft;
using Fretlore.Score;

namespace Fretlore.Binding.Form;

/// <summary>A bar as it is written, and how repeats stand at it.</summary>
internal readonly record struct WrittenBar(int Column)
{
    public bool StartsRepeat { get; init; }

    public int RepeatCount { get; init; }

    public ImmutableArray<int> EndingPasses { get; init; }

    public bool StartsEnding { get; init; }

    public bool EndsEnding { get; init; }

    /// <summary>Columns that are this bar in other passes.</summary>
    public ImmutableArray<int> OtherColumns { get; init; }
}

/// <summary>Which columns of a song are written, and where each column is found among them.</summary>
internal sealed record WrittenPlan(ImmutableArray<WrittenBar> Bars, ImmutableArray<int> WrittenOf);

/// <summary>Writes repeats again where every part plays the same in each pass; elsewhere the passes stay written out.</summary>
internal static class RepeatFolding
{
    /// <param name="columns">The song as played.</param>
    /// <param name="parts">For each part a bar for each column.</param>
    /// <param name="repeats">Repeats asked for; the longest that fit are taken, for repeats don't nest.</param>
    public static WrittenPlan Fold(IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<DraftBar>> parts, IEnumerable<RepeatSpan> repeats)
    {
        var taken = new bool[columns.Count];
        var folds = new Dictionary<int, RepeatSpan>();
        foreach (var repeat in repeats.OrderByDescending(r => r.End - r.Start).ThenBy(r => r.Start))
        {
            if (repeat.Passes.Length < 2 || Overlaps(repeat, taken) || !PassesAreAlike(repeat, columns, parts)) continue;
            for (var c = repeat.Start; c < repeat.End; c++) taken[c] = true;
            folds[repeat.Start] = repeat;
        }
        return Write(columns.Count, folds);
    }

    private static bool Overlaps(RepeatSpan repeat, bool[] taken)
    {
        for (var c = repeat.Start; c < repeat.End; c++)
        {
            if (taken[c]) return true;
        }
        return false;
    }

    private static bool PassesAreAlike(RepeatSpan repeat, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<DraftBar>> parts)
    {
        var first = repeat.Passes[0];
        if (first.Body == 0) return false;
        // A pass that goes straight on beside passes with endings can't be written with repeat signs.
        if (repeat.Passes.Any(p => p.EndingLength > 0) && repeat.Passes.Any(p => p.EndingLength == 0)) return false;
        var endings = new Dictionary<int, PassSpan>();
        for (var p = 0; p < repeat.Passes.Length; p++)
        {
            var pass = repeat.Passes[p];
            if (p > 0 && pass.Start != repeat.Passes[p - 1].End) return false;
            if (pass.Body != first.Body || !AreAlike(first.Start, pass.Start, first.Body, columns, parts)) return false;
            if (!JumpsFit(first, pass, repeat.Passes[^1], columns)) return false;
            if (pass.Ending < 0 || endings.TryAdd(pass.Ending, pass)) continue;
            var ending = endings[pass.Ending];
            if (pass.EndingLength != ending.EndingLength) return false;
            if (!AreAlike(ending.Start + ending.Body, pass.Start + pass.Body, pass.EndingLength, columns, parts)) return false;
        }
        return true;
    }

    // A place to jump to is written in the first pass or in all; a jump in the last or in all.
    private static bool JumpsFit(PassSpan first, PassSpan pass, PassSpan last, IReadOnlyList<Column> columns)
    {
        for (var i = 0; i < pass.Body; i++)
        {
            var (here, begin) = (columns[pass.Start + i], columns[first.Start + i]);
            if ((here.IsSegno && !begin.IsSegno) || (here.IsCoda && !begin.IsCoda)) return false;
            if (here.Jump != Jump.None && here.Jump != columns[last.Start + i].Jump) return false;
        }
        return true;
    }

    private static bool AreAlike(int a, int b, int count, IReadOnlyList<Column> columns, IReadOnlyList<IReadOnlyList<DraftBar>> parts)
    {
        if (a == b) return true;
        for (var i = 0; i < count; i++)
        {
            if (!columns[a + i].IsPlayedLike(columns[b + i])) return false;
            foreach (var part in parts)
            {
                if (!part[a + i].HasSameMusicAs(part[b + i])) return false;
            }
        }
        return true;
    }

    private static WrittenPlan Write(int count, Dictionary<int, RepeatSpan> folds)
    {
        var bars = ImmutableArray.CreateBuilder<WrittenBar>(count);
        var writtenOf = new int[count];
        for (var c = 0; c < count;)
        {
            if (folds.TryGetValue(c, out var fold))
            {
                WriteFold(fold, bars, writtenOf);
                c = fold.End;
                continue;
            }
            writtenOf[c] = bars.Count;
            bars.Add(new WrittenBar(c++) { EndingPasses = [], OtherColumns = [] });
        }
        return new WrittenPlan(bars.DrainToImmutable(), ImmutableCollectionsMarshal.AsImmutableArray(writtenOf));
    }

    private static void WriteFold(RepeatSpan fold, ImmutableArray<WrittenBar>.Builder bars, int[] writtenOf)
    {
        var (count, body) = (fold.Passes.Length, fold.Passes[0].Body);
        var endings = fold.Passes.Select((p, i) => (Pass: p, Number: i + 1)).Where(p => p.Pass is { Ending: >= 0, EndingLength: > 0 })
            .GroupBy(p => p.Pass.Ending).ToList();
        var begin = bars.Count;
        for (var i = 0; i < body; i++)
        {
            Add(fold.Passes.AsSpan(), i, []);
        }
        bars[begin] = bars[begin] with { StartsRepeat = true };
        if (endings.Count == 0) bars[^1] = bars[^1] with { RepeatCount = count };
        foreach (var ending in endings)
        {
            var passes = ending.Select(p => p.Number).ToImmutableArray();
            var spans = ending.Select(p => p.Pass).ToArray();
            var start = bars.Count;
            for (var i = 0; i < spans[0].EndingLength; i++) Add(spans, body + i, passes);
            bars[start] = bars[start] with { StartsEnding = true };
            bars[^1] = bars[^1] with { EndsEnding = true, RepeatCount = passes.Any(p => p < count) ? count : 0 };
        }

        // The bar that lies so far into each of these passes.
        void Add(ReadOnlySpan<PassSpan> spans, int offset, ImmutableArray<int> passes)
        {
            var others = new int[spans.Length - 1];
            for (var p = 0; p < others.Length; p++) others[p] = spans[p + 1].Start + offset;
            writtenOf[spans[0].Start + offset] = bars.Count;
            foreach (var other in others) writtenOf[other] = bars.Count;
            bars.Add(new WrittenBar(spans[0].Start + offset) { EndingPasses = passes, OtherColumns = ImmutableCollectionsMarshal.AsImmutableArray(others) });
        }
    }
}
