using System.Globalization;
using Fretlore.Lesson.Script;
using Fretlore.Lesson.Subjects;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Excerpts;

/// <summary>What may be given away of a song: a song of its own that holds the chosen bars and nothing else, and says so in its title.</summary>
/// <remarks>Riffs, shapes, road maps and the lesson are left out as far as the bars don't show them, so that nothing made from it can tell of other bars.</remarks>
public static class Excerpt
{
    /// <summary>The excerpt that the sheet's lesson chooses; null when it chooses none, or when there is nothing in it.</summary>
    /// <param name="song">The song.</param>
    /// <param name="reading">Its reading: the excerpt keeps the keys it has in the song.</param>
    public static Song? Of(Song song, SongReading reading)
    {
        if (song.Lesson?.Excerpt is not { } what || Bars(song, what) is not var (first, count) || count == 0) return null;
        var kept = song.Parts.Where(part => what.Part is null || part.Name == what.Part).ToArray();
        var parts = kept.Select(part => part with { Bars = CutBars.Of(part.Bars.Items.Slice(first, count)) }).ToValueList();
        var shapes = parts.SelectMany(p => p.Bars).SelectMany(b => b.Strands).SelectMany(s => s.Events).Select(e => e.Shape).OfType<string>().ToHashSet();
        var uses = song.RoadMapUses.Where(u => kept.Contains(song.Parts[u.Part]) && u.FirstBar < first + count && u.FirstBar + u.BarCount > first)
            .Select(u => Clip(u, first, count) with { Part = Array.IndexOf(kept, song.Parts[u.Part]) }).ToValueList();
        return new Song
        {
            Info = song.Info with { Title = $"{song.Info.Title} (free excerpt: {Named(song, first, count)} of {song.Bars[^1].Number})" },
            Bars = WrittenBars(song, reading, first, count),
            Parts = parts,
            Sections = song.Sections.Where(s => s.FirstBar < first + count && s.FirstBar + s.BarCount > first).Select(s => Clip(s, first, count)).ToValueList(),
            Shapes = song.Shapes.Where(s => shapes.Contains(s.Name)).ToValueList(),
            RoadMaps = song.RoadMaps.Where(m => uses.Any(u => u.RoadMap == m.Name)).Select(m => Shown(m, song, uses, first)).ToValueList(),
            RoadMapUses = uses,
            NoteCount = song.NoteCount,
        };
    }

    /// <summary>For example "bars 9 to 12", by the printed numbers.</summary>
    private static string Named(Song song, int first, int count)
    {
        var (from, to) = (song.Bars[first].Number, song.Bars[first + count - 1].Number);
        return from == to ? string.Create(CultureInfo.InvariantCulture, $"bar {from}") : string.Create(CultureInfo.InvariantCulture, $"bars {from} to {to}");
    }

    private static (int First, int Count)? Bars(Song song, Taught what)
    {
        var (first, count) = (0, song.Bars.Count);
        if (what.Name.Length > 0)
        {
            // A riff or a road map is no stretch of the song.
            if (song.Sections.FirstOrDefault(s => s.Name == what.Name) is not { } section) return null;
            (first, count) = (section.FirstBar, section.BarCount);
            if (what.Bars is { } range) (first, count) = (first + range.First - 1, range.Last - range.First + 1);
            return (first, count);
        }
        if (what.Bars is not { } printed) return null;
        int[] within = [.. Enumerable.Range(0, count).Where(i => song.Bars[i].Number >= printed.First && song.Bars[i].Number <= printed.Last)];
        return within.Length == 0 ? null : (within[0], within[^1] - within[0] + 1);
    }

    // The numbers stay the song's, so that they agree with the full pages; repeats are written once.
    private static ValueList<Bar> WrittenBars(Song song, SongReading reading, int first, int count)
    {
        var bars = new Bar[count];
        for (var i = 0; i < count; i++)
        {
            var bar = song.Bars[first + i];
            var key = bar.Key ?? (reading.Keys.IsDefaultOrEmpty ? null : reading.Keys[first + i]);
            bars[i] = bar with
            {
                Key = key, StartsRepeat = false, RepeatCount = 0, EndingPasses = [], StartsEnding = false, EndsEnding = false,
                EndLine = i + 1 == count ? BarLine.Single : bar.EndLine,
            };
        }
        var tempos = bars[0].Tempos.Where(mark => !mark.At.IsZero).Prepend(new TempoMark(Beats.Zero, TempoText.At(song, first)));
        bars[0] = bars[0] with { Tempos = tempos.ToValueList(), FeelChange = song.Bars.Take(first + 1).Select(b => b.FeelChange).LastOrDefault(f => f is not null) };
        return bars.ToValueList();
    }

    private static Section Clip(Section section, int first, int count)
    {
        var (from, to) = (Math.Max(section.FirstBar, first), Math.Min(section.FirstBar + section.BarCount, first + count));
        return new Section(section.Name, from - first, to - from);
    }

    private static RoadMapUse Clip(RoadMapUse use, int first, int count)
    {
        var (from, to) = (Math.Max(use.FirstBar, first), Math.Min(use.FirstBar + use.BarCount, first + count));
        return use with { FirstBar = from - first, BarCount = to - from };
    }

    // Rules for bars that are not shown, and riffs from elsewhere, are not told.
    private static RoadMap Shown(RoadMap map, Song song, ValueList<RoadMapUse> uses, int first)
    {
        var use = uses.First(u => u.RoadMap == map.Name);
        var source = song.RoadMapUses.FirstOrDefault(u => u.RoadMap == map.Name && u.FirstBar == first + use.FirstBar);
        var isWhole = source is not null && source.BarCount == use.BarCount;
        return map with { Rules = map.Rules.Where(IsTold).ToValueList() };

        bool IsTold(RoadMapRule rule) => rule switch
        {
            FixedRule or LickRule => false,
            EndRule => isWhole,
            { Bars: { } bars } => isWhole || (source is not null && bars.Ranges.All(r => r.First > 0 && r.Last > 0 && r.Last <= use.BarCount)),
            _ => true,
        };
    }
}
