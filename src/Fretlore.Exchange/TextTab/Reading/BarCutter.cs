using Fretlore.Exchange.Reports;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>One bar of a system, or the piece of one that stands in it.</summary>
internal sealed class CutBar
{
    /// <summary>For each line of the system where the bar begins and ends in it.</summary>
    public required (int From, int To)[] Spans { get; init; }

    /// <summary>For each line a place in it as a column of the bar.</summary>
    public required Func<int, int, int> ColumnOf { get; init; }

    public int Width { get; init; }

    public bool StartsRepeat { get; set; }

    public bool EndsRepeat { get; set; }

    public bool IsDouble { get; set; }

    /// <summary>False when it goes on from the system before, or in the next one.</summary>
    public bool HasStart { get; set; } = true;

    public bool HasEnd { get; set; } = true;
}

/// <summary>Cuts the lines of a system at their bar lines, each bar for itself, so that lines that have slipped come together again at the next bar line.</summary>
internal sealed class BarCutter(TextFindings findings)
{
    private sealed record BarMark(int Start, int End, bool StartsRepeat, bool EndsRepeat, bool IsDouble);

    public List<CutBar> Cut(List<StringLine> lines)
    {
        var marks = lines.ConvertAll(MarksOf);
        var count = marks.Select(m => m.Count).GroupBy(c => c).OrderByDescending(g => g.Count()).ThenByDescending(g => g.Key).First().Key;
        var model = marks.FindIndex(m => m.Count == count);
        var isUneven = false;
        for (var i = 0; i < lines.Count; i++)
        {
            if (marks[i].Count == count) continue;
            // A line that has lost a bar line, or has one too many, is cut where the others are.
            isUneven = true;
            var shift = lines[i].Start - lines[model].Start;
            marks[i] = marks[model].ConvertAll(m => m with { Start = Math.Min(m.Start + shift, lines[i].End), End = Math.Min(m.End + shift, lines[i].End) });
        }
        var bars = new List<CutBar>();
        for (var b = 0; b <= count; b++)
        {
            var spans = new (int From, int To)[lines.Count];
            for (var i = 0; i < lines.Count; i++)
            {
                var from = b == 0 ? lines[i].Start : marks[i][b - 1].End;
                spans[i] = (from, Math.Max(from, b == count ? lines[i].End : marks[i][b].Start));
            }
            var width = spans.Max(s => s.To - s.From);
            if (width == 0) continue;
            var columns = Columns(lines, spans, ref isUneven);
            var bar = new CutBar { Spans = spans, Width = columns.Width, ColumnOf = columns.Of, HasStart = b > 0, HasEnd = b < count };
            if (b > 0) bar.StartsRepeat = marks.Exists(m => m[b - 1].StartsRepeat);
            if (b < count)
            {
                bar.EndsRepeat = marks.Exists(m => m[b].EndsRepeat);
                bar.IsDouble = marks.Exists(m => m[b].IsDouble);
            }
            // A bar that holds nothing and is next to no wider than its lines is a line's second stroke.
            if (width <= 1 && IsEmpty(lines, spans)) continue;
            bars.Add(bar);
        }
        if (isUneven) findings.Add(TextFindingKind.LinesUneven, lines[0].Line, lines[0].Start, lines[0].End - lines[0].Start);
        return bars;
    }

    private static bool IsEmpty(List<StringLine> lines, (int From, int To)[] spans)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            for (var at = spans[i].From; at < spans[i].To; at++)
            {
                if (lines[i].Line.Text[at] != lines[i].Filler && lines[i].Line.Text[at] is not (' ' or '-')) return false;
            }
        }
        return true;
    }

    // Where the lines of a bar differ in length only because someone did not make room for frets of two digits, those count as one column.
    private static (int Width, Func<int, int, int> Of) Columns(List<StringLine> lines, (int From, int To)[] spans, ref bool isUneven)
    {
        var widths = spans.Select(s => s.To - s.From).ToList();
        if (widths.Distinct().Count() == 1) return (widths[0], (line, at) => at - spans[line].From);
        var narrow = Enumerable.Range(0, lines.Count).Select(i => Narrow(lines[i].Line.Text, spans[i].From, spans[i].To)).ToList();
        if (narrow.Distinct().Count() == 1) return (narrow[0], (line, at) => Narrow(lines[line].Line.Text, spans[line].From, at));
        isUneven = true;
        return (widths.Max(), (line, at) => at - spans[line].From);
    }

    private static int Narrow(string text, int from, int to)
    {
        var width = 0;
        for (var i = from; i < to; i++)
        {
            if (i == from || !char.IsAsciiDigit(text[i]) || !char.IsAsciiDigit(text[i - 1])) width++;
        }
        return width;
    }

    private static List<BarMark> MarksOf(StringLine line)
    {
        var text = line.Line.Text;
        var marks = new List<BarMark>();
        for (var i = line.Start; i < line.End; i++)
        {
            if (text[i] is not ('|' or '!')) continue;
            var (start, end) = (i, i + 1);
            while (end < line.End && text[end] is '|' or '!') end++;
            var isDouble = end - start > 1;
            var ends = start > line.Start && IsDot(text, start - 1, -1, line);
            var starts = end < line.End && IsDot(text, end, 1, line);
            if (ends) start--;
            if (starts) end++;
            marks.Add(new BarMark(start, end, starts, ends, isDouble));
            i = end - 1;
        }
        return marks;
    }

    // The dots of a repeat: a colon, or an o or star that stands alone beside a bar line.
    private static bool IsDot(string text, int at, int away, StringLine line)
    {
        if (text[at] == ':') return true;
        if (text[at] is not ('o' or 'O' or '*')) return false;
        var beside = at + away;
        return beside < line.Start || beside >= line.End || text[beside] == line.Filler || text[beside] is '|';
    }
}
