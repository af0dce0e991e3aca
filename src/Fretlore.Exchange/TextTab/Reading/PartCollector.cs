using System.Globalization;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Music;

namespace Fretlore.Exchange.TextTab.Reading;

/// <summary>Goes through the blocks of a text and collects each player's bars.</summary>
internal sealed class PartCollector(TextFindings findings, Remarks remarks, bool isOwn)
{
    // Beyond the end of any line.
    private const int FarRight = 100_000;

    private readonly SignReader signs = new(findings, isOwn);
    private readonly BarCutter cutter = new(findings);
    private readonly Dictionary<string, ReadPart> byName = new(StringComparer.Ordinal);
    private ReadPart? current;
    private string? player;
    private string? section;
    private bool isLegend;
    private bool saysTuning;

    public TabHeading Heading { get; } = new();

    public List<ReadPart> Parts { get; } = [];

    public void Read(List<TabBlock> blocks)
    {
        foreach (var block in blocks)
        {
            switch (block)
            {
                case TabBlock.Words words:
                    foreach (var line in words.Lines) ReadWords(line);
                    break;
                case TabBlock.System system:
                    ReadSystem(system);
                    break;
            }
        }
    }

    private void ReadWords(TabLine line)
    {
        if (line.IsBlank) return;
        if (isLegend && line.Text.StartsWith("  ", StringComparison.Ordinal)) return;
        isLegend = isOwn && line.Text == "Signs:";
        if (isLegend) return;
        if (HeaderWords.Read(line.Text, Heading))
        {
            if (Heading.Part is { } name)
            {
                (player, current) = (name, null);
                (Heading.Part, Heading.Tuning, Heading.Capo) = (null, null, null);
            }
            return;
        }
        if (HeaderWords.SectionOf(line.Text) is { } found) section = found;
        else if (!isOwn && HeaderWords.PlayerOf(line.Text) is { } named) (player, current) = (named, null);
        else if (line.Text.AsSpan().ContainsAnyInRange('0', 'z')) LeaveOut(line);
    }

    private void LeaveOut(TabLine line)
    {
        var words = Sheets.SheetWords.OneLine(line.Text);
        remarks.Add(RemarkKind.LeftOut, $"The words “{(words.Length > 60 ? words[..60] + "…" : words)}” are not carried over.", line: line.Number);
    }

    private void ReadSystem(TabBlock.System system)
    {
        var lines = system.Strings;
        var nearest = new List<TabLine>();
        foreach (var line in system.Above)
        {
            if (IsLabels(line)) nearest.Insert(0, line);
            else ReadWords(line);
        }
        nearest.AddRange(system.Below.Where(IsLabels));
        foreach (var line in system.Below.Where(l => !IsLabels(l))) LeaveOut(line);
        var part = PartFor(lines);
        var numbers = StringsOf(lines, part);
        var labels = LabelReader.Read(nearest);
        foreach (var line in labels.Rest) LeaveOut(line);
        if (labels.NamesRiffs) remarks.Add(RemarkKind.LeftOut, "The names of riffs are not carried over: riffs are found anew.", part.Title);
        var first = part.Bars.Count;
        var open = first > 0 && part.Bars[^1].IsOpen ? part.Bars[^1] : null;
        var cut = cutter.Cut(lines);
        for (var b = 0; b < cut.Count; b++) AddBar(part, lines, numbers, cut, b, labels, b == 0 ? open : null);
        if (part.Bars.Count > ImportLimits.MostBars) throw new RefusedFileException("The tab has more bars than are taken.", "Split it and import its pieces.");
        if (section is not null && part.Bars.Count > first)
        {
            part.Sections.Add((first, section));
            section = null;
        }
        TakeRepeats(part, first, lines, labels);
    }

    // A line over the strings that says something of them, rather than a heading or a word to the reader.
    private static bool IsLabels(TabLine line) => LabelReader.Read([line]).Rest.Count == 0;

    private void AddBar(ReadPart part, List<StringLine> lines, int[] numbers, List<CutBar> cut, int index, SystemLabels labels, ReadBar? open)
    {
        var span = cut[index];
        var (from, to) = (span.Spans[0].From, index + 1 < cut.Count ? cut[index + 1].Spans[0].From : FarRight);
        var bar = new ReadBar
        {
            Line = lines[0].Line,
            Index = from,
            Width = span.Width,
            StartsRepeat = span.StartsRepeat,
            Repeats = span.EndsRepeat ? -1 : 0,
            IsDouble = span.IsDouble,
            IsOpen = !span.HasEnd,
            IsUnbounded = !span.HasEnd && cut.Count == 1,
        };
        for (var i = 0; i < lines.Count; i++)
        {
            var (line, text) = (i, span.Spans[i]);
            bar.Notes.AddRange(signs.Read(lines[i], text.From, text.To, numbers[i], part.Strings[numbers[i] - 1], at => span.ColumnOf(line, at)));
        }
        Share(labels, bar, index == 0 ? 0 : from, to, c => Math.Max(-1, span.ColumnOf(0, Math.Min(c, lines[0].Line.Text.Length))));
        // It goes on from the line before when neither has a bar line between.
        if (open is not null && !span.HasStart) open.Append(bar);
        else part.Bars.Add(bar);
    }

    private static void Share(SystemLabels all, ReadBar bar, int from, int to, Func<int, int> columnOf)
    {
        var own = bar.Labels;
        own.Values.AddRange(all.Values.Where(v => Within(v.Column)).Select(v => v with { Column = columnOf(v.Column) }));
        own.Counts.AddRange(all.Counts.Where(c => Within(c.Column)).Select(c => (columnOf(c.Column), c.Place)));
        own.Chords.AddRange(Of(all.Chords));
        own.Hand.AddRange(Of(all.Hand));
        own.Marks.AddRange(Of(all.Marks));
        own.Changes.AddRange(Of(all.Changes));
        own.Words.AddRange(Of(all.Words));
        own.Stretches.AddRange(all.Stretches.Where(s => s.To >= from && s.From < to).Select(s => s with { From = columnOf(Math.Max(s.From, from)), To = columnOf(Math.Min(s.To, to - 1)) }));
        bar.Rests = all.Rests.Where(r => Within(r.Column)).Select(r => r.Count).FirstOrDefault();
        foreach (var (start, end, passes) in all.Endings)
        {
            // The line over an ending begins at its first bar, or over the bar line before it.
            if (start <= Math.Max(from, bar.Index) + 2 && end > bar.Index + 1) bar.Passes = passes;
        }
        foreach (var (column, count) in all.Times.Where(t => Within(t.Column)))
        {
            if (bar.Repeats != 0) bar.Repeats = Math.Max(2, count);
        }

        bool Within(int column) => column >= from && column < to;

        IEnumerable<ReadLabel> Of(List<ReadLabel> labels) => labels.Where(l => Within(l.Column)).Select(l => l with { Column = columnOf(l.Column) });
    }

    // "x4" beside a system without repeat signs: the system is played so often.
    private void TakeRepeats(ReadPart part, int first, List<StringLine> lines, SystemLabels labels)
    {
        var count = 0;
        foreach (var line in lines)
        {
            if (line.Words.Length == 0) continue;
            var read = LabelReader.Read([line.Line with { Text = line.Words }]);
            if (read.Times.Count > 0) count = read.Times[0].Count;
            else LeaveOut(line.Line with { Text = line.Words });
        }
        if (count == 0 && !isOwn && labels.Times.Count == 1) count = labels.Times[0].Count;
        if (count < 2 || part.Bars.Count == first) return;
        var bars = part.Bars.Skip(first).ToList();
        if (bars.FindLast(b => b.Repeats != 0) is { } ends) ends.Repeats = count;
        else if (!bars.Exists(b => b.StartsRepeat))
        {
            (bars[0].StartsRepeat, bars[^1].Repeats) = (true, count);
            findings.Add(TextFindingKind.RepeatTaken, lines[0].Line, lines[0].Start, lines[0].End - lines[0].Start, count.ToString(CultureInfo.InvariantCulture));
        }
    }

    private ReadPart PartFor(List<StringLine> lines)
    {
        if (current is not null && (isOwn || current.Tuning.StringCount == lines.Count || lines.Count < TabBlocks.FewestStrings || Partial(lines, current.Tuning) is not null)) return current;
        var name = player ?? (isOwn ? "Guitar" : lines.Count <= 5 && current is not null ? "Bass" : "Guitar");
        if (byName.TryGetValue(name, out var known) && known.Tuning.StringCount == lines.Count) return current = known;
        var tuning = TuningFor(lines);
        var title = name;
        for (var n = 2; byName.ContainsKey(title); n++) title = string.Create(CultureInfo.InvariantCulture, $"{name} {n}");
        var capo = Heading.Capo ?? Capo.Off;
        if (!capo.Fits(tuning.StringCount)) findings.Add(TextFindingKind.CapoMisplaced, lines[0].Line, 0, Math.Max(1, lines[0].Start), capo.Strings);
        current = new ReadPart(title, tuning, capo.Fits(tuning.StringCount) ? capo : Capo.Off);
        if (Parts.Count == ImportLimits.MostParts) throw new RefusedFileException("The tab has more parts than are taken.", "Import the parts you want on their own.");
        byName[title] = current;
        Parts.Add(current);
        return current;
    }

    // As the head of the tab says, else as the lines are named, else the usual one.
    private Tuning TuningFor(List<StringLine> lines)
    {
        var (count, names) = (lines.Count, new List<NoteName>());
        if (Heading.Tuning is { } words)
        {
            saysTuning = TuningWords.Of(words, isOwn ? null : count) is not null;
            if (TuningWords.Of(words, isOwn ? null : count) is { } said) return said;
        }
        foreach (var line in lines)
        {
            if (NoteName.TryParse(line.Label, out var name)) names.Add(name);
        }
        var isPartial = count < TabBlocks.FewestStrings || (names.Count == count && !Fits(names) && Partial(lines, TuningWords.UsualFor(6)) is not null);
        var tuning = names.Count == count && !isPartial ? TuningWords.OfNames([.. Enumerable.Reverse(names)]) : TuningWords.UsualFor(isPartial ? 6 : count);
        if (!saysTuning) findings.Add(TextFindingKind.TuningTaken, lines[0].Line, 0, Math.Max(1, lines[0].Start), tuning.ToString());
        return tuning;
    }

    // Names that are those of a usual neck with so many strings, or nearly.
    private static bool Fits(List<NoteName> highToLow) =>
        Math.Min(TuningWords.Fit([.. Enumerable.Reverse(highToLow)]).Cost, TuningWords.Fit(highToLow).Cost) <= 2 * highToLow.Count;

    // The strings that lines of fewer strings show, by their names from the top down; null when the names are not those of the neck.
    private static int[]? Partial(List<StringLine> lines, Tuning tuning)
    {
        var numbers = new int[lines.Count];
        var number = 0;
        for (var i = 0; i < lines.Count; i++)
        {
            if (!NoteName.TryParse(lines[i].Label, out var name)) return null;
            do number++;
            while (number <= tuning.StringCount && tuning[new StringNumber(number)].Name.PitchClass != name.PitchClass);
            if (number > tuning.StringCount) return null;
            numbers[i] = number;
        }
        return numbers;
    }

    private int[] StringsOf(List<StringLine> lines, ReadPart part)
    {
        var strings = part.Tuning.StringCount;
        if (lines.Count == strings)
        {
            var numbers = Enumerable.Range(1, strings).ToArray();
            var names = lines.ConvertAll(l => NoteName.TryParse(l.Label, out var name) ? name.PitchClass : -1);
            // Named from the low string down, and not so that it would be right as well.
            if (names.TrueForAll(n => n >= 0) && names.Where((n, i) => n != part.Tuning.LowToHigh[strings - 1 - i].Name.PitchClass).Any()
                && names.Select((n, i) => n == part.Tuning.LowToHigh[i].Name.PitchClass).All(same => same))
            {
                findings.Add(TextFindingKind.UpsideDown, lines[0].Line, 0, Math.Max(1, lines[0].Start));
                Array.Reverse(numbers);
            }
            return numbers;
        }
        if (Partial(lines, part.Tuning) is { } some) return some;
        findings.Add(TextFindingKind.LinesMissing, lines[0].Line, lines[0].Start, lines[0].End - lines[0].Start, lines.Count.ToString(CultureInfo.InvariantCulture));
        return [.. Enumerable.Range(1, lines.Count).Select(n => Math.Min(n, strings))];
    }
}
