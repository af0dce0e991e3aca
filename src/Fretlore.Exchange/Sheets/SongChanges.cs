using Fretlore.Exchange.Reports;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>Where metre, tempo, key, feel and jumps are written: in the settings of a section, or in the line of one part.</summary>
internal sealed class SongChanges
{
    private readonly Song song;
    private readonly Dictionary<(int Part, int Bar, Beats At), string> inLines = [];
    private readonly Dictionary<int, List<string>> inSections = [];
    private readonly Dictionary<(int Part, int Bar), string> jumps = [];
    private readonly HashSet<(int Part, int Bar)> barsWithChanges;

    public SongChanges(Song song, IReadOnlyList<Repeat> repeats, Remarks remarks)
    {
        this.song = song;
        var sectionStarts = song.Sections.Select(s => s.FirstBar).ToHashSet();
        for (var bar = 0; bar < song.Bars.Count; bar++)
        {
            var repeat = repeats.FirstOrDefault(r => r.First == bar);
            var returns = repeat is not null
                && (song.Bars[bar].Tempos.Any(t => !t.At.IsZero) || Enumerable.Range(bar + 1, repeat.End - bar - 1).Any(ChangesWithin));
            var changes = AtStart(bar, returns).ToList();
            if (changes.Count > 0)
            {
                if (sectionStarts.Contains(bar) && !returns && !song.Bars[bar].IsPickup) inSections[bar] = changes;
                else inLines[(PartFor(bar, Beats.Zero) ?? 0, bar, Beats.Zero)] = string.Join(' ', changes.Select(c => $"({Inline(c)})"));
            }
            AddJumps(bar);
            foreach (var mark in song.Bars[bar].Tempos)
            {
                if (mark.At.IsZero) continue;
                var at = PartFor(bar, mark.At) is not null ? mark.At : NextEvent(bar, mark.At);
                if (at is { } found && PartFor(bar, found) is { } part) inLines[(part, bar, found)] = $"({SheetWords.Of(mark.Tempo)})";
                if (at != mark.At) remarks.Add(at is null ? RemarkKind.LeftOut : RemarkKind.Changed, "A tempo that begins between notes stands at the next note of its bar.", null, bar + 1);
            }
        }
        barsWithChanges = [.. inLines.Keys.Select(k => (k.Part, k.Bar)), .. jumps.Keys];
    }

    /// <summary>The jump to be written at the end of this part's bar, or null.</summary>
    public string? JumpAt(int part, int bar) => jumps.GetValueOrDefault((part, bar));

    // In the line of one part: places to jump to before their bar, jumps after it.
    private void AddJumps(int bar)
    {
        var part = PartFor(bar, Beats.Zero) ?? 0;
        var place = (song.Bars[bar].IsSegno ? " (segno)" : "") + (song.Bars[bar].IsCoda ? " (coda)" : "");
        if (place.Length > 0) inLines[(part, bar, Beats.Zero)] = (inLines.GetValueOrDefault((part, bar, Beats.Zero)) + place).TrimStart();
        if (song.Bars[bar].Jump != Jump.None) jumps[(part, bar)] = SheetWords.Of(song.Bars[bar].Jump);
    }

    public string? At(int part, int bar, Beats at) => inLines.GetValueOrDefault((part, bar, at));

    /// <summary>True when something is written in this part's bar besides its music.</summary>
    public bool Any(int part, int bar) => barsWithChanges.Contains((part, bar));

    /// <summary>True when something is written at the start of this part's bar.</summary>
    public bool AnyAtStart(int part, int bar) => inLines.ContainsKey((part, bar, Beats.Zero));

    /// <summary>True when something is written between the notes of this part's bar.</summary>
    public bool AnyWithin(int part, int bar) => Any(part, bar) && inLines.Keys.Any(k => k.Part == part && k.Bar == bar && !k.At.IsZero);

    public IEnumerable<string> OfSection(int firstBar) => inSections.GetValueOrDefault(firstBar) ?? [];

    private bool ChangesWithin(int bar) =>
        song.Bars[bar].Meter != song.Bars[bar - 1].Meter || song.Bars[bar].Key != song.Bars[bar - 1].Key || song.Bars[bar].FeelChange is not null
        || song.Bars[bar].Tempos.Count > 0;

    private IEnumerable<string> AtStart(int bar, bool returns)
    {
        var now = song.Bars[bar];
        var before = bar > 0 ? song.Bars[bar - 1] : null;
        if (returns || (before is not null && now.Meter != before.Meter)) yield return "meter " + SheetWords.Of(now.Meter);
        foreach (var mark in now.Tempos.Where(t => t.At.IsZero && (bar > 0 || returns))) yield return "tempo " + SheetWords.Of(mark.Tempo);
        if (now.Key is { } key && (returns || (before is not null && key != before.Key))) yield return "key " + SheetWords.Of(key);
        if (now.FeelChange is { } feel && (bar > 0 || returns || feel == Feel.Straight)) yield return "feel " + SheetWords.Of(feel);
    }

    private static string Inline(string setting) => setting.StartsWith("tempo ", StringComparison.Ordinal) ? setting[6..] : setting.StartsWith("feel ", StringComparison.Ordinal) ? setting[5..] : setting;

    // The first part that has a line in the bar's section and, for a place within the bar, an event that starts there.
    private int? PartFor(int bar, Beats at)
    {
        var section = song.Sections.First(s => s.FirstBar <= bar && bar < s.FirstBar + s.BarCount);
        var lines = Enumerable.Range(0, song.Parts.Count).Where(p => HasLine(song, p, section)).ToList();
        if (at.IsZero) return lines.Count > 0 ? lines[0] : null;
        // Nothing can be written within a bar that says "again": a part that writes its bar out comes first.
        return lines.Where(p => song.Parts[p].Bars[bar].Strands.Take(1).Any(s => s.Events.Any(e => e.Start == at)))
            .OrderBy(p => song.Parts[p].Bars[bar].Repeats > 0).Select(p => (int?)p).FirstOrDefault();
    }

    private Beats? NextEvent(int bar, Beats at)
    {
        var starts = song.Parts.SelectMany(p => p.Bars[bar].Strands.Take(1)).SelectMany(s => s.Events).Select(e => e.Start).Where(s => s > at).ToList();
        return starts.Count > 0 ? starts.Min() : null;
    }

    /// <summary>True when a part has something to say in a section, or stands in for parts that all rest.</summary>
    public static bool HasLine(Song song, int part, Section section)
    {
        if (Plays(song, part, section)) return true;
        return part == 0 && !Enumerable.Range(0, song.Parts.Count).Any(p => Plays(song, p, section));
    }

    private static bool Plays(Song song, int part, Section section)
    {
        var bars = song.Parts[part].Bars;
        return Enumerable.Range(section.FirstBar, section.BarCount).Any(b => !bars[b].IsRest || bars[b].RoadMap is not null || bars[b].Neck.Capo != Before(b).Capo);

        Guitar.Neck Before(int bar) => bar > 0 ? bars[bar - 1].Neck : song.Parts[part].Neck;
    }
}
