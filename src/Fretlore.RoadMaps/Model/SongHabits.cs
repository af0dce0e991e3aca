using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.RoadMaps.Stretches;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Model;

/// <summary>What a song's own phrases are like: how far they go from note to note, in which rhythms, and how notes are played.</summary>
/// <remarks>Counted from the written bars of the part and the riffs that a road map draws on. Nothing is known beyond the song.</remarks>
public sealed record SongHabits
{
    private const int Widest = 12;

    /// <summary>How often neighbours are 0, 1 … 12 or more semitones apart.</summary>
    public required ImmutableArray<int> Intervals { get; init; }

    /// <summary>Rhythms of one beat that come in the song's phrases, with how often.</summary>
    public required ImmutableArray<(RhythmCell Cell, int Count)> Cells { get; init; }

    /// <summary>Notes, and those of them that are bent; long notes, and those with vibrato; neighbours on a string, and those joined by hand and slid.</summary>
    public required int Notes { get; init; }

    public int Bent { get; init; }

    public int Long { get; init; }

    public int Shaken { get; init; }

    public int OnString { get; init; }

    public int Joined { get; init; }

    public int Slid { get; init; }

    /// <summary>Reads the phrases of the stretch's part and of the riffs its map names.</summary>
    public static SongHabits Of(SoloStretch stretch, PhraseModel model)
    {
        var reader = new Reader(model.LongSeconds);
        var own = stretch.Part.Bars;
        for (var first = 0; first < own.Count;)
        {
            if (own[first].IsRest)
            {
                first++;
                continue;
            }
            var end = first;
            while (end < own.Count && !own[end].IsRest && stretch.Song.Bars[end].Meter == stretch.Song.Bars[first].Meter) end++;
            reader.Add([.. own.Items[first..end]], [.. stretch.Song.Bars.Items[first..end]], stretch.Bars[0].SecondsPerQuarter);
            first = end;
        }
        var named = stretch.Map.RulesOf<LickRule>().SelectMany(l => l.Riffs.Items).Concat(stretch.Map.RulesOf<FixedRule>().Select(f => f.Riff)).Distinct();
        foreach (var riff in named.Select(stretch.RiffOf).OfType<Riff>()) reader.Add(riff.Content, riff.Bars, stretch.Bars[0].SecondsPerQuarter);
        return reader.Read();
    }

    /// <summary>The cost of an interval in bits: the trade's figures and the song's own habit, by how much there is of it.</summary>
    public double Bits(int semitones, PhraseModel model)
    {
        var size = Math.Abs(semitones);
        var extra = size > Widest ? (size - Widest) * model.WiderLeap : 0;
        var at = Math.Min(size, Widest);
        var trade = Share(model.Intervals.AsSpan(), at);
        var total = Intervals.Sum();
        // Half a note more for each interval, so that none is impossible that the song happens not to have.
        var own = total == 0 ? trade : (Intervals[at] + 0.5) / (total + 0.5 * Intervals.Length);
        var weight = total / (total + model.TradeNotes);
        return -Math.Log2((1 - weight) * trade + weight * own) + extra;
    }

    /// <summary>A chance in the trade's figures moved towards the song's own.</summary>
    public static double Blend(double trade, int had, int of, double tradeNotes) => (trade * tradeNotes / 4 + had) / (tradeNotes / 4 + of);

    private static double Share(ReadOnlySpan<double> bits, int at)
    {
        var total = 0.0;
        foreach (var bit in bits) total += Math.Pow(2, -bit);
        return Math.Pow(2, -bits[at]) / total;
    }

    private sealed class Reader(double longSeconds)
    {
        private readonly int[] intervals = new int[Widest + 1];
        private readonly Dictionary<RhythmCell, int> cells = [];
        private int notes, bent, longNotes, shaken, onString, joined, slid;

        public void Add(ValueList<PartBar> bars, ValueList<Bar> form, double secondsPerQuarter)
        {
            var line = SoloLine.Of(bars, [.. form.Select(b => b.Length)]);
            for (var i = 0; i < line.Length; i++)
            {
                var note = line[i].Top;
                notes++;
                if (note.Bend is not null && line[i].Arrival != note.Sounding.Midi) bent++;
                if (line[i].Length.ToDouble() * secondsPerQuarter >= longSeconds)
                {
                    longNotes++;
                    if (note.Vibrato.Width != VibratoWidth.None) shaken++;
                }
                if (i == 0 || line[i].FollowsRest) continue;
                intervals[Math.Min(Widest, Math.Abs(line[i].Arrival - line[i - 1].Final))]++;
                if (line[i - 1].Top.String != note.String || line[i - 1].Top.Fret == note.Fret) continue;
                onString++;
                if (note.Attack is Attack.HammerOn or Attack.PullOff) joined++;
                else if (note.Attack is Attack.Glide or Attack.PickedGlide) slid++;
            }
            AddCells(line, form);
        }

        private void AddCells(ImmutableArray<LineMoment> line, ValueList<Bar> form)
        {
            for (var bar = 0; bar < form.Count; bar++)
            {
                var beats = StrongBeats.Starts(form[bar].Meter);
                for (var beat = 0; beat < beats.Count; beat++)
                {
                    var (start, end) = (beats[beat], beat + 1 < beats.Count ? beats[beat + 1] : form[bar].Length);
                    var own = line.Where(m => m.Bar == bar + 1 && m.At >= start && m.At < end).ToList();
                    if (own.Count == 0 || own[0].At != start || CellOf([.. own.Select(m => m.At), end]) is not { } cell) continue;
                    cells[cell] = cells.GetValueOrDefault(cell) + 1;
                }
            }
        }

        // A beat in plain values, or all of it one tuplet of the usual kinds.
        private static RhythmCell? CellOf(Beats[] times)
        {
            var lengths = times.Zip(times.Skip(1), (a, b) => b - a).ToArray();
            var values = lengths.Select(NoteValues.Of).ToArray();
            if (values.All(v => v is not null)) return new RhythmCell(values.Select(v => v!.Value).ToValueList());
            if (lengths.Distinct().Count() > 1 || lengths.Length is not (3 or 5 or 6)) return null;
            var time = Tuplet.UsualTimeOf(lengths.Length);
            return NoteValues.Of(lengths[0] * Beats.Of(lengths.Length, time)) is { Dots: 0 } unit
                ? new RhythmCell(Enumerable.Repeat(unit, lengths.Length).ToValueList(), new Tuplet(lengths.Length, time, unit.Base)) : null;
        }

        public SongHabits Read() => new()
        {
            Intervals = [.. intervals],
            Cells = [.. cells.OrderByDescending(c => c.Value).ThenBy(c => c.Key.ToString(), StringComparer.Ordinal).Select(c => (c.Key, c.Value))],
            Notes = notes,
            Bent = bent,
            Long = longNotes,
            Shaken = shaken,
            OnString = onString,
            Joined = joined,
            Slid = slid,
        };
    }
}
