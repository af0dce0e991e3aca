using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Fretlore.Engraving.Layout.Fretting;
using Fretlore.Engraving.Layout.Staff;
using Fretlore.Hands.Plans;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Model;

/// <summary>The first pass: a song and its reading become measures of columns with slots.</summary>
internal static class ModelBuilder
{
    public static ScoreModel Build(Song song, SongReading reading, SongHands? hands, PageOptions options, Ink ink)
    {
        var indexes = options.Parts.Count > 0 ? options.Parts : Enumerable.Range(0, song.Parts.Count).ToValueList();
        var staves = indexes
            .Select((part, i) => new StaffPlan(i, song.Parts[part], part, Clef.For(song.Parts[part], reading), options.Show))
            .ToImmutableArray();
        var shapes = new ChordShapes(ink);
        var shared = new SharedColumns(ink, shapes);
        var builders = staves.Select(s => new MeasureParts(s, reading, shapes, shared)).ToArray();
        var sections = new Dictionary<int, string>();
        foreach (var section in song.Sections) sections.TryAdd(section.FirstBar, section.Name);

        var measures = ImmutableArray.CreateBuilder<Measure>();
        foreach (var (first, count) in MeasurePlan.Of(song, staves))
        {
            var bar = song.Bars[first];
            var before = first > 0 ? song.Bars[first - 1] : null;
            var columns = count > 1 ? [] : ColumnsOf(staves, first, bar);
            var index = measures.Count;
            if (options.SectionsStartSystems && sections.ContainsKey(first)) before = null;
            measures.Add(new Measure
            {
                Index = index,
                FirstBar = first,
                BarCount = count,
                Bar = bar,
                LastBar = song.Bars[first + count - 1],
                Columns = columns,
                Parts = [.. builders.Select(b => b.Next(index, first, bar, columns))],
                ShowsMeter = before is null || before.Meter.Count != bar.Meter.Count || before.Meter.Unit != bar.Meter.Unit,
                SignatureBefore = before is null ? null : before.Key?.Signature ?? 0,
                Section = sections.GetValueOrDefault(first),
                StartsSystem = options.SectionsStartSystems && sections.ContainsKey(first),
            });
        }
        var all = measures.ToImmutable();
        return new ScoreModel(song, staves, all, Links.Of(PlacedNotes(staves, all), staves.Length, song.NoteCount), new HandSigns(song, indexes, hands, options));
    }

    private static ImmutableArray<Column> ColumnsOf(ImmutableArray<StaffPlan> staves, int bar, Bar shared)
    {
        var starts = StartsOf(staves, bar, shared);
        var shortest = new Beats[starts.Length];
        Array.Fill(shortest, shared.Length);
        foreach (var staff in staves)
        {
            if (staff.Part.Bars[bar].Repeats > 0) continue;
            foreach (var strand in staff.Part.Bars[bar].Strands)
            {
                var column = 0;
                foreach (var item in strand.Events)
                {
                    while (column < starts.Length && starts[column] < item.Start) column++;
                    for (var c = column; c < starts.Length && starts[c] < item.End; c++) shortest[c] = Beats.Min(shortest[c], item.Duration);
                }
            }
        }
        var columns = ImmutableArray.CreateBuilder<Column>(starts.Length);
        for (var i = 0; i < starts.Length; i++)
        {
            var end = i + 1 < starts.Length ? starts[i + 1] : Beats.Max(shared.Length, starts[i] + Beats.Of(1, 16));
            columns.Add(new Column(starts[i], end - starts[i], Beats.Max(shortest[i], end - starts[i])));
        }
        return columns.MoveToImmutable();
    }

    // The times at which something starts in any of the parts, each once, in order.
    private static Beats[] StartsOf(ImmutableArray<StaffPlan> staves, int bar, Bar shared)
    {
        var times = new List<Beats>();
        foreach (var staff in staves) MeasureParts.AddTimes(staff.Part.Bars[bar], shared, times);
        if (times.Count == 0) return [Beats.Zero];
        times.Sort();
        var sorted = CollectionsMarshal.AsSpan(times);
        var count = 0;
        foreach (var time in sorted)
        {
            if (count == 0 || time != sorted[count - 1]) sorted[count++] = time;
        }
        return [.. sorted[..count]];
    }

    private static IEnumerable<PlacedNote> PlacedNotes(ImmutableArray<StaffPlan> staves, ImmutableArray<Measure> measures)
    {
        var inOrder = new List<(Slot Slot, StemSide Rule)>();
        foreach (var staff in staves)
        {
            foreach (var measure in measures)
            {
                inOrder.Clear();
                var voices = measure.Parts[staff.Index].Voices;
                foreach (var voice in voices)
                {
                    foreach (var slot in voice.Slots) inOrder.Add((slot, voice.Rule));
                }
                foreach (var (slot, rule) in voices.Length > 1 ? inOrder.OrderBy(s => s.Slot.Event.Start) : inOrder.AsEnumerable())
                {
                    for (var i = 0; i < slot.Graces.Length; i++) yield return new PlacedNote(staff.Index, slot, i, true, rule);
                    for (var i = 0; i < slot.Heads.Length; i++) yield return new PlacedNote(staff.Index, slot, i, false, rule);
                }
            }
        }
    }
}
