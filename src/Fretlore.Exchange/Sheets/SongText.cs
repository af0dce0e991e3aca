using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Fretlore.Exchange.Reports;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>The riffs and sections of a sheet.</summary>
internal sealed class SongText
{
    private const int Width = 100;

    private readonly Song song;
    private readonly Remarks remarks;
    private readonly ImmutableArray<Repeat> repeats;
    private readonly SongChanges changes;
    private readonly Dictionary<string, NamedShape> shapes;
    private readonly BarKeys keys = new();
    private readonly FoldPlan folds = new();
    private readonly HashSet<(int Part, int Bar)> again = [];

    public SongText(Song song, bool findsRiffs, Remarks remarks)
    {
        (this.song, this.remarks) = (song, remarks);
        repeats = Repeat.In(song.Bars);
        changes = new SongChanges(song, repeats, remarks);
        shapes = song.Shapes.ToDictionary(s => s.Name);
        var segments = Segments().ToList();
        var finder = new RiffFinder(song, keys, changes);
        finder.UseNamed(folds, segments);
        if (!findsRiffs) return;
        FindAgain(segments);
        var names = song.Riffs.Select(r => r.Name).Concat(song.RoadMaps.Select(r => r.Name)).Concat(song.Parts.Select(p => p.Name)).ToHashSet(StringComparer.Ordinal);
        finder.Find(folds, segments, (part, bar) => NextName(part, bar, names));
    }

    public void Write(StringBuilder text)
    {
        foreach (var riff in song.Riffs) WriteRiff(riff, text);
        foreach (var found in folds.Found) WriteFound(found, text);
        LessonText.WriteRoadMaps(song, text);
        var lines = song.Parts.Select((p, i) => new LineText(SourceOf(i))).ToArray();
        var necks = song.Parts.Select(p => p.Neck).ToArray();
        foreach (var section in song.Sections) WriteSection(section, lines, necks, text);
    }

    private LineSource SourceOf(int part) => new()
    {
        Bars = song.Bars,
        Content = song.Parts[part].Bars,
        Title = song.Parts[part].Title,
        Shapes = shapes,
        Remarks = remarks,
        Repeats = repeats,
        RiffAt = bar => folds.At(part, bar),
        ChangesAt = (bar, at) => changes.At(part, bar, at),
        JumpAt = bar => changes.JumpAt(part, bar),
        IsAgain = bar => again.Contains((part, bar)),
        RestsThrough = repeat => RestsThrough(part, repeat),
    };

    // A part that rests all through a repeat says for how long; another one says that it is a repeat.
    private bool RestsThrough(int part, Repeat repeat)
    {
        var bars = Enumerable.Range(repeat.First, repeat.End - repeat.First).ToList();
        var neck = song.Parts[part].Bars[repeat.First].Neck;
        return bars.TrueForAll(b => IsPlainRest(song.Parts[part].Bars[b], b) && song.Parts[part].Bars[b].Neck == neck && !changes.Any(part, b))
            && song.Parts.Where((_, p) => p != part).Any(p => bars.Exists(b => !IsPlainRest(p.Bars[b], b)));
    }

    private bool IsPlainRest(PartBar content, int bar) => content.IsRest && content.RoadMap is null && !song.Bars[bar].IsPickup && song.Bars[bar].EndLine != BarLine.Double;

    private void WriteSection(Section section, LineText[] lines, Neck[] necks, StringBuilder text)
    {
        text.Append("section ").Append(SheetName(section.Name)).Append('\n');
        foreach (var setting in changes.OfSection(section.FirstBar))
        {
            var blank = setting.IndexOf(' ', StringComparison.Ordinal);
            text.Append("  ").Append(setting[..blank].PadRight(7)).Append(setting[blank..]).Append('\n');
        }
        var width = song.Parts.Max(p => p.Name.Length);
        for (var part = 0; part < song.Parts.Count; part++)
        {
            if (!SongChanges.HasLine(song, part, section)) continue;
            var items = lines[part].Write(section.FirstBar, section.FirstBar + section.BarCount, necks[part]);
            necks[part] = lines[part].Neck ?? necks[part];
            var indent = "  " + song.Parts[part].Name.PadRight(width) + "  ";
            Lay(items, indent, text);
        }
        text.Append('\n');
    }

    private static string SheetName(string name) =>
        name.All(c => char.IsAsciiLetterOrDigit(c) || c == ' ') && char.IsAsciiLetterUpper(name[0]) && !name.Split(' ').Contains("like") ? name : SheetWords.Quoted(name);

    // Bars side by side as long as they fit; plays with commas between, as they are read.
    private static void Lay(List<string> items, string indent, StringBuilder text)
    {
        var line = new StringBuilder(indent);
        var isFirst = true;
        for (var i = 0; i < items.Count; i++)
        {
            if (!isFirst && line.Length + 1 + items[i].Length > Width)
            {
                text.Append(line.ToString().TrimEnd()).Append('\n');
                line.Clear().Append(' ', indent.Length);
                isFirst = true;
            }
            if (!isFirst) line.Append(' ');
            line.Append(items[i]);
            isFirst = false;
        }
        text.Append(line.ToString().TrimEnd()).Append('\n');
    }

    private void WriteFound(FoldedRiff found, StringBuilder text)
    {
        // The repeat that the riff is played in is the song's, not the riff's.
        var bars = song.Bars.Items.Skip(found.First).Take(found.Count)
            .Select(b => b with { StartsRepeat = false, RepeatCount = 0, EndingPasses = [], StartsEnding = false, EndsEnding = false, Tempos = [] }).ToValueList();
        text.Append("riff ").Append(found.Name).Append('\n');
        var header = song.Bars[0].Meter;
        if (bars[0].Meter != header) text.Append("  meter ").Append(SheetWords.Of(bars[0].Meter)).Append('\n');
        var content = song.Parts[found.Part].Bars.Items.Skip(found.First).Take(found.Count).ToValueList();
        WriteLines(bars, content, song.Parts[found.Part].Neck, bar => again.Contains((found.Part, found.First + bar)), text);
    }

    private void WriteRiff(Riff riff, StringBuilder text)
    {
        if (riff.Bars.Count == 0) return;
        text.Append("riff ").Append(riff.Name).Append('\n');
        var (first, header) = (riff.Bars[0], song.Bars[0]);
        var owner = song.Parts[folds.OwnerOf(riff.Name) ?? song.RiffUses.Where(u => u.Riff == riff.Name).Select(u => (int?)u.Part).FirstOrDefault() ?? 0].Neck;
        if (riff.Neck.Tuning != owner.Tuning) text.Append("  tuning ").Append(riff.Neck.Tuning).Append('\n');
        if (riff.Neck.Capo != owner.Capo) text.Append("  capo ").Append(riff.Neck.Capo).Append('\n');
        if (first.Meter != header.Meter) text.Append("  meter ").Append(SheetWords.Of(first.Meter)).Append('\n');
        if (first.Tempos.Count > 0 && first.Tempos[0].Tempo != HeaderText.TempoOf(song)) text.Append("  tempo ").Append(SheetWords.Of(first.Tempos[0].Tempo)).Append('\n');
        if (first.Key is { } key && key != header.Key) text.Append("  key ").Append(SheetWords.Of(key)).Append('\n');
        if (first.FeelChange is { } feel && feel != (header.FeelChange ?? Feel.Straight)) text.Append("  feel ").Append(SheetWords.Of(feel)).Append('\n');
        WriteLines(riff.Bars, riff.Content, riff.Neck, _ => false, text);
    }

    private void WriteLines(ValueList<Bar> bars, ValueList<PartBar> content, Neck neck, Func<int, bool> isAgain, StringBuilder text)
    {
        var source = new LineSource
        {
            Bars = bars,
            Content = content,
            Title = song.Parts[0].Title,
            Shapes = shapes,
            Remarks = remarks,
            Repeats = Repeat.In(bars),
            ChangesAt = (bar, at) => at.IsZero && bar > 0 && bars[bar].Meter != bars[bar - 1].Meter ? $"(meter {SheetWords.Of(bars[bar].Meter)})" : TempoAt(bars[bar], at, bar),
            IsAgain = isAgain,
        };
        Lay(new LineText(source).Write(0, bars.Count, neck), "  ", text);
        text.Append('\n');
    }

    private static string? TempoAt(Bar bar, Beats at, int index)
    {
        if (at.IsZero && index == 0) return null;
        foreach (var mark in bar.Tempos)
        {
            if (mark.At == at) return $"({SheetWords.Of(mark.Tempo)})";
        }
        return null;
    }

    private IEnumerable<Segment> Segments()
    {
        var borders = new SortedSet<int>(song.Sections.SelectMany(s => new[] { s.FirstBar, s.FirstBar + s.BarCount }));
        foreach (var repeat in repeats)
        {
            borders.UnionWith([repeat.First, repeat.BodyEnd, repeat.End]);
            borders.UnionWith(repeat.Endings.Select(e => e.End));
        }
        for (var bar = 0; bar < song.Bars.Count; bar++)
        {
            if (song.Bars[bar].IsPickup) borders.UnionWith([bar, bar + 1]);
        }
        var list = borders.ToList();
        for (var part = 0; part < song.Parts.Count; part++)
        {
            for (var i = 0; i + 1 < list.Count; i++)
            {
                if (!song.Bars[list[i]].IsPickup) yield return new Segment(part, list[i], list[i + 1]);
            }
        }
    }

    private void FindAgain(List<Segment> segments)
    {
        foreach (var segment in segments)
        {
            var content = song.Parts[segment.Part].Bars;
            for (var bar = segment.First + 1; bar < segment.End; bar++)
            {
                if (content[bar].IsRest || content[bar].RoadMap is not null || changes.Any(segment.Part, bar) || !BarKeys.StandsAlone(content[bar])) continue;
                if (content[bar].Repeats == 0 && keys.Of(song.Bars[bar], content[bar]) == keys.Of(song.Bars[bar - 1], content[bar - 1])) again.Add((segment.Part, bar));
            }
        }
    }

    // After the section it comes in first, and where several parts play, after its part too: verse-riff, verse-bass-2.
    private string NextName(int part, int bar, HashSet<string> names)
    {
        var section = song.Sections.LastOrDefault(s => s.FirstBar <= bar)?.Name ?? "song";
        var stem = SheetNames.Short(section);
        // What the section's name makes no word of, such as another script's, is called after the part.
        stem = stem is "guitar" or "" ? song.Parts[part].Name : stem;
        stem = $"{stem}-{(song.Parts.Count > 1 ? song.Parts[part].Name : "riff")}";
        if (names.Add(stem)) return stem;
        for (var n = 2; ; n++)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"{stem}-{n}");
            if (names.Add(name)) return name;
        }
    }
}
