using System.Collections.Immutable;
using Fretlore.Binding.Draft;
using Fretlore.Binding.Lines;
using Fretlore.Binding.Problems;
using Fretlore.Binding.Words;
using Fretlore.Music;
using Fretlore.Syntax;

namespace Fretlore.Binding.Riffs;

/// <summary>Makes a riff from another with some bars replaced or taken away.</summary>
internal sealed class VariationBinder(BindContext context, BoundRiff baseRiff, Meter headerMeter)
{
    private readonly Flow made = new();
    private readonly List<EntryState> entries = [];
    private Meter?[]? meters;

    /// <summary>Bars <paramref name="From"/> to <paramref name="To"/> of the base become these; without music they go.</summary>
    private sealed record Edit(EditSyntax Syntax, int From, int To, Flow New, ImmutableArray<EntryState> Entries)
    {
        /// <summary>Written number of its first bar in the variation, less one.</summary>
        public int Offset { get; set; }
    }

    /// <summary>For each written bar its metre.</summary>
    private Meter?[] Meters => meters ??= MetersOf(baseRiff.Flow);

    public bool IsIncomplete { get; private set; } = baseRiff.IsIncomplete;

    public (Flow Flow, ImmutableArray<EntryState> Entries) Bind(VariationSyntax variation)
    {
        var edits = new Edit?[baseRiff.Flow.WrittenCount + 1];
        foreach (var syntax in variation.Edits)
        {
            if (Read(syntax) is not { } edit) continue;
            var bars = edits.AsSpan(edit.From, edit.To - edit.From + 1);
            if (bars.ContainsAnyExcept((Edit?)null)) context.Problems.Add(FormProblems.BarEditedTwice(syntax.Span));
            else bars.Fill(edit);
        }
        var numbers = Number(edits);
        Splice(edits, numbers);
        return (made, [.. entries]);
    }

    private Edit? Read(EditSyntax syntax)
    {
        var last = baseRiff.Flow.WrittenCount;
        int from, to;
        if (syntax.Last is { IsMissing: false }) from = to = last;
        else
        {
            if (Numerals.Of(syntax.From) is not { } first) return null;
            from = first;
            to = syntax.To is { IsMissing: false } ? Numerals.Of(syntax.To) ?? first : first;
        }
        if (from < 1 || to > last || to < from)
        {
            context.Problems.Add(FormProblems.NoSuchBar(syntax.Span, baseRiff.Name, last));
            return null;
        }
        if (syntax.Removes || syntax.Music is null) return new Edit(syntax, from, to, new Flow(), []);
        var binder = new MusicBinder(context, baseRiff.Neck, Meters[from] ?? headerMeter, baseRiff.Entries[from - 1]);
        var music = binder.Bind(syntax.Music);
        IsIncomplete |= binder.IsIncomplete;
        return new Edit(syntax, from, to, music, [.. binder.Entries]);
    }

    // New written numbers of the base's bars that stay; edits get theirs where the bars they replace were.
    private int[] Number(Edit?[] edits)
    {
        var numbers = new int[baseRiff.Flow.WrittenCount + 1];
        var next = 0;
        for (var written = 1; written < numbers.Length; written++)
        {
            var edit = edits[written];
            if (edit is null)
            {
                numbers[written] = ++next;
                entries.Add(baseRiff.Entries[written - 1]);
            }
            else if (edit.From == written)
            {
                edit.Offset = next;
                next += edit.New.WrittenCount;
                entries.AddRange(edit.Entries);
            }
        }
        made.WrittenCount = next;
        return numbers;
    }

    private void Splice(Edit?[] edits, int[] numbers)
    {
        var bars = baseRiff.Flow.Bars;
        var moved = new int[bars.Count + 1];
        var touched = new bool[bars.Count];
        for (var i = 0; i < bars.Count;)
        {
            moved[i] = made.Bars.Count;
            var written = bars[i].Written;
            var edit = edits[written];
            if (edit is null)
            {
                made.Add(bars[i].Bar, bars[i].Origin, numbers[written]);
                i++;
                continue;
            }
            var end = i;
            while (end < bars.Count && bars[end].Written == written + end - i && bars[end].Written <= edit.To) end++;
            if (written != edit.From || bars[end - 1].Written != edit.To)
            {
                context.Problems.Add(FormProblems.EditAcrossRepeat(edit.Syntax.Span));
            }
            made.Append(edit.New, null, edit.Offset);
            for (; i < end; i++)
            {
                touched[i] = true;
                moved[i + 1] = made.Bars.Count;
            }
        }
        moved[bars.Count] = made.Bars.Count;
        KeepRepeats(moved);
        foreach (var riff in baseRiff.Flow.Riffs)
        {
            if (!touched.AsSpan(riff.Start, riff.Count).Contains(true)) made.Riffs.Add(riff with { Start = moved[riff.Start] });
        }
        foreach (var map in baseRiff.Flow.RoadMaps)
        {
            if (!touched.AsSpan(map.Start, map.Count).Contains(true)) made.RoadMaps.Add(map with { Start = moved[map.Start] });
        }
    }

    // An edit within a repeat is made in each pass, so the repeat stays one.
    private void KeepRepeats(int[] moved)
    {
        foreach (var repeat in baseRiff.Flow.Repeats)
        {
            var passes = repeat.Passes.Select(p =>
            {
                var (start, middle, end) = (moved[p.Start], moved[p.Start + p.Body], moved[p.End]);
                return new PassSpan(start, middle - start, p.Ending, end - middle);
            }).ToImmutableArray();
            if (passes.All(p => p.Body > 0)) made.Repeats.Add(new RepeatSpan(passes));
        }
    }

    private static Meter?[] MetersOf(Flow flow)
    {
        var meters = new Meter?[flow.WrittenCount + 1];
        foreach (var bar in flow.Bars) meters[bar.Written] = bar.Bar.Meter;
        return meters;
    }
}
