using Fretlore.Exchange.Reports;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>What the bar lines of one bar say.</summary>
internal sealed class MeasureLines
{
    public bool StartsRepeat { get; set; }

    /// <summary>How often the repeat that ends here is played, 0 for none, -1 where that is not said.</summary>
    public int Repeats { get; set; }

    public ValueList<int> StartsEnding { get; set; }

    public bool EndsEnding { get; set; }

    public BarLine Line { get; set; }
}

/// <summary>Puts repeats and endings on bars.</summary>
internal static class FormReader
{
    public static void Write(IReadOnlyList<MeasureLines> lines, List<Bar> bars, Remarks remarks)
    {
        ValueList<int> passes = [];
        for (var i = 0; i < bars.Count; i++)
        {
            var line = lines[i];
            if (line.StartsEnding.Count > 0) passes = line.StartsEnding;
            bars[i] = bars[i] with
            {
                StartsRepeat = line.StartsRepeat,
                RepeatCount = line.Repeats,
                EndingPasses = passes,
                StartsEnding = line.StartsEnding.Count > 0,
                EndsEnding = passes.Count > 0 && line.EndsEnding,
                EndLine = bars[i].Jump == Jump.Fine ? BarLine.Final
                    : bars[i].Jump.GoesBack() || (line.Line == BarLine.Final && i < bars.Count - 1) ? BarLine.Double : line.Line,
            };
            if (line.EndsEnding) passes = [];
        }
        DropLooseEndings(bars, remarks);
        Count(bars);
    }

    // An ending that the repeat goes on after, to its sign in a later bar, is played on every pass.
    private static void DropLooseEndings(List<Bar> bars, Remarks remarks)
    {
        for (var i = 0; i < bars.Count; i++)
        {
            if (bars[i].RepeatCount == 0 || bars[i].EndingPasses.Count > 0) continue;
            for (var j = i - 1; j >= 0 && bars[j].RepeatCount == 0 && !bars[j + 1].StartsRepeat; j--)
            {
                if (bars[j].EndingPasses.Count == 0) continue;
                if (bars[j].StartsEnding) remarks.Add(RemarkKind.LeftOut, "An ending that its repeat goes on after is not carried over: its bars are played on each pass.", null, j + 1);
                bars[j] = bars[j] with { EndingPasses = [], StartsEnding = false, EndsEnding = false };
            }
        }
    }

    // A repeat whose number of passes is not said is played twice, or as often as its endings are numbered.
    private static void Count(List<Bar> bars)
    {
        for (var i = 0; i < bars.Count; i++)
        {
            if (bars[i].RepeatCount == 0) continue;
            var (first, last) = (i, i);
            while (first > 0 && bars[first].EndingPasses.Count > 0) first--;
            if (bars[i].EndingPasses.Count > 0)
            {
                while (last + 1 < bars.Count && bars[last + 1].EndingPasses.Count > 0 && !bars[last + 1].StartsRepeat) last++;
            }
            var group = bars.Skip(first).Take(last - first + 1).ToList();
            var count = Math.Max(group.Max(b => b.RepeatCount), group.SelectMany(b => b.EndingPasses).DefaultIfEmpty(0).Max());
            bars[i] = bars[i] with { RepeatCount = Math.Max(2, count) };
        }
    }
}
