using Fretlore.Exchange.Reports;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>The tempos of a file: as marks of its bars, and as a map from ticks to seconds.</summary>
internal sealed class MidiTempos
{
    // A tempo that changes more often than once a beat, over and over, is one that speeds up or slows down.
    private const int FewSteps = 6;
    private const double SmallestStep = 0.02;
    private const int UsualMicroseconds = 500_000;

    // Quarters a minute, as the sheet language has them.
    private const decimal Slowest = 5;
    private const decimal Fastest = 1000;

    private readonly List<(long Tick, double Seconds, double SecondsPerTick)> map = [];

    public MidiTempos(MidiChunks file, MidiConductor conductor, MidiBars bars, Remarks remarks)
    {
        var changes = file.CountsFrames ? [] : conductor.Tempos.GroupBy(t => t.Tick).Select(g => g.Last()).ToList();
        if (file.CountsFrames) remarks.Add(RemarkKind.Guessed, "The file counts frames of film and says nothing of beats: 120 quarters a minute are taken.");
        else if (changes.Count == 0 || changes[0].Tick > 0) remarks.Add(RemarkKind.Guessed, "The file says no tempo at its start: 120 quarters a minute are taken.");
        if (changes.Count == 0 || changes[0].Tick > 0) changes.Insert(0, (0, UsualMicroseconds));
        foreach (var (tick, microseconds) in changes)
        {
            var seconds = map.Count == 0 ? 0 : map[^1].Seconds + (tick - map[^1].Tick) * map[^1].SecondsPerTick;
            map.Add((tick, seconds, microseconds / 1e6 / file.TicksPerQuarter));
        }
        if (changes.Exists(c => 60e6m / c.Microseconds is < Slowest or > Fastest)) remarks.Add(RemarkKind.Changed, "A tempo that no sheet can say is written as the nearest that it can: 5 to 1000 quarters a minute.");
        Marks = new List<TempoMark>[bars.All.Count];
        for (var i = 0; i < Marks.Length; i++) Marks[i] = [];
        if (IsGradual(changes, file.TicksPerQuarter)) AddSteps(changes, bars, remarks);
        else foreach (var (tick, microseconds) in changes) Add(tick, microseconds, bars);
    }

    /// <summary>For each bar its tempos, in order.</summary>
    public List<TempoMark>[] Marks { get; }

    /// <summary>Seconds from the song's start.</summary>
    public double SecondsAt(long tick)
    {
        var (low, high) = (0, map.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (map[middle].Tick <= tick) low = middle;
            else high = middle - 1;
        }
        return map[low].Seconds + (tick - map[low].Tick) * map[low].SecondsPerTick;
    }

    private static bool IsGradual(List<(long Tick, int Microseconds)> changes, double ticksPerQuarter) =>
        changes.Count > FewSteps && changes.Zip(changes.Skip(1)).Count(p => p.Second.Tick - p.First.Tick < ticksPerQuarter) > changes.Count / 2;

    // What changes all the time is said once a bar, where it has become another tempo.
    private void AddSteps(List<(long Tick, int Microseconds)> changes, MidiBars bars, Remarks remarks)
    {
        var (last, next, said) = (changes[0].Microseconds, 0, 0.0);
        for (var bar = 0; bar < bars.All.Count; bar++)
        {
            while (next < changes.Count && changes[next].Tick <= bars.All[bar].Tick + 0.5) last = changes[next++].Microseconds;
            if (bar > 0 && Math.Abs(last / said - 1) < SmallestStep) continue;
            said = last;
            Marks[bar].Add(new TempoMark(Beats.Zero, Of(last)));
        }
        remarks.Add(RemarkKind.Changed, "A tempo that speeds up or slows down is written in steps, one a bar at most.");
    }

    private void Add(long tick, int microseconds, MidiBars bars)
    {
        var (bar, at) = bars.Place(tick);
        if (at >= bars.All[bar].Length.ToDouble()) return;
        var place = ExactGrid.Nearest(at, bars.TicksPerQuarter);
        if (place >= bars.All[bar].Length) return;
        if (Marks[bar].Count > 0 && Marks[bar][^1].At == place) Marks[bar].RemoveAt(Marks[bar].Count - 1);
        Marks[bar].Add(new TempoMark(place, Of(microseconds)));
    }

    // The number with the fewest decimals that gives these microseconds.
    private static Tempo Of(int microseconds)
    {
        var perMinute = Math.Clamp(60e6m / microseconds, Slowest, Fastest);
        for (var decimals = 0; decimals < 3; decimals++)
        {
            var rounded = Math.Round(perMinute, decimals);
            if (rounded > 0 && Math.Round(60e6m / rounded) == microseconds) return new Tempo(new NoteValue(ValueBase.Quarter), rounded);
        }
        return new Tempo(new NoteValue(ValueBase.Quarter), Math.Round(perMinute, 3));
    }
}
