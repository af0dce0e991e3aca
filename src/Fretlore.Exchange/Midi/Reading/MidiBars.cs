using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Music;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>A bar of a file.</summary>
/// <param name="Tick">Where it begins.</param>
/// <param name="Start">Quarter notes from the song's start, as the bars are written.</param>
/// <param name="Length">Its length.</param>
/// <param name="Meter">Its metre.</param>
/// <param name="IsPickup">True for a first bar that is shorter than the metre after it.</param>
internal readonly record struct MidiBar(double Tick, Beats Start, Beats Length, Meter Meter, bool IsPickup);

/// <summary>Lays a file's ticks out in bars by its metres.</summary>
internal sealed class MidiBars
{
    private readonly List<MidiBar> bars = [];

    private MidiBars(double ticksPerQuarter) => TicksPerQuarter = ticksPerQuarter;

    public double TicksPerQuarter { get; }

    public IReadOnlyList<MidiBar> All => bars;

    /// <summary>The bars that hold all up to a tick.</summary>
    public static MidiBars Of(MidiChunks file, MidiConductor conductor, long end, Remarks remarks)
    {
        var made = new MidiBars(file.TicksPerQuarter);
        var metres = conductor.Metres.GroupBy(m => m.Tick).Select(g => g.Last()).ToList();
        if (metres.Count == 0 || metres[0].Tick > 0)
        {
            metres.Insert(0, (0, 4, 4));
            remarks.Add(RemarkKind.Guessed, "The file says no metre at its start: 4/4 is taken.");
        }
        for (var i = 0; i < metres.Count && (i == 0 || metres[i].Tick < end); i++)
        {
            var (tick, count, unit) = metres[i];
            var until = i + 1 < metres.Count ? Math.Min(metres[i + 1].Tick, Math.Max(end, 1)) : Math.Max(end, 1);
            made.Add(new Meter(count, unit), tick, until, i + 1 < metres.Count && metres[i + 1].Tick < end, remarks);
        }
        made.FindPickup();
        return made;
    }

    /// <summary>The bar that a tick is in, and how far into it, in quarter notes.</summary>
    public (int Bar, double At) Place(long tick)
    {
        var (low, high) = (0, bars.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (bars[middle].Tick <= tick + 0.5) low = middle;
            else high = middle - 1;
        }
        return (low, Math.Max(0, (tick - bars[low].Tick) / TicksPerQuarter));
    }

    /// <summary>The bar that a written place is in, and how far into it.</summary>
    /// <param name="at">Quarter notes from the song's start, as written.</param>
    public (int Bar, Beats At) PlaceOf(Beats at)
    {
        var (low, high) = (0, bars.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (bars[middle].Start <= at) low = middle;
            else high = middle - 1;
        }
        return (low, at - bars[low].Start);
    }

    private void Add(Meter meter, long tick, long until, bool changes, Remarks remarks)
    {
        var (start, first) = (bars.Count > 0 ? bars[^1].Start + bars[^1].Length : Beats.Zero, bars.Count);
        for (double at = tick; at < until - 0.5;)
        {
            if (bars.Count == ImportLimits.MostBars) throw new RefusedFileException("The MIDI file has more bars than are taken.", "Cut off the silence at its end, or import its pieces.");
            var next = tick + meter.Length.ToDouble() * TicksPerQuarter * (bars.Count - first + 1);
            var (length, written) = (meter.Length, meter);
            if (changes && next > until + 0.5)
            {
                // The metre changes within a bar: what is there of it is a bar of its own.
                length = ValuePieces.Rounded(Beats.Of((long)Math.Round((until - at) / TicksPerQuarter * 960), 960));
                if (MeterOf(length, meter.Unit) is not { } other) break;
                (written, next) = (other, until);
                remarks.Add(RemarkKind.Changed, "The metre changes within this bar: its first part is a bar of its own.", null, bars.Count + 1);
            }
            bars.Add(new MidiBar(at, start, length, written, false));
            (start, at) = (start + length, next);
        }
    }

    private static Meter? MeterOf(Beats length, int unit)
    {
        for (; unit <= 64; unit *= 2)
        {
            var units = length * unit / 4;
            if (units.Denominator == 1 && units.Numerator is >= 1 and <= 64) return new Meter((int)units.Numerator, unit);
        }
        return null;
    }

    // A file has no pickup bars: one is told as a first bar in a shorter metre.
    private void FindPickup()
    {
        if (bars.Count > 1 && bars[0].Length < bars[1].Length && bars[0].Meter != bars[1].Meter)
            bars[0] = bars[0] with { Meter = bars[1].Meter, IsPickup = true };
    }
}
