using Fretlore.Music;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>How each quarter of each bar is divided, and with it where ticks are written.</summary>
/// <param name="bars">The bars.</param>
/// <param name="swung">For each bar the value that is swung in it, or null.</param>
/// <param name="isExact">True when the file's times are those of note values.</param>
internal sealed class WrittenRhythm(MidiBars bars, ValueBase?[] swung, bool isExact)
{
    private readonly Dictionary<(int Bar, int Quarter), int> divisions = [];
    private readonly double tolerance = ExactGrid.Tolerance(bars.TicksPerQuarter);

    /// <summary>True where pairs are swung.</summary>
    public bool IsSwung(int bar) => swung[bar] is not null;

    /// <summary>Into how many parts a quarter is divided; powers of two are plain values.</summary>
    public int DivisionOf(int bar, int quarter) => divisions.GetValueOrDefault((bar, quarter), 1);

    public void Divide(int bar, int quarter, int division) => divisions[(bar, quarter)] = division;

    public static bool IsPlain(int division) => (division & (division - 1)) == 0;

    /// <summary>Where a tick is written, in whole quarters' divisions.</summary>
    /// <param name="tick">The tick.</param>
    /// <param name="isStart">True for a start, which has been taken into account when quarters were divided.</param>
    public (int Bar, Beats At) Place(long tick, bool isStart)
    {
        var (bar, at) = bars.Place(tick);
        var length = bars.All[bar].Length;
        var quarter = (int)Math.Floor(at + tolerance);
        var division = DivisionOf(bar, quarter);
        var place = IsPlain(division) ? Plain(Unswung(bar, at), division, isStart) : Beats.Of((long)Math.Round(at * division), division);
        if (place < length) return (bar, place);
        return bar + 1 < bars.All.Count && isStart ? (bar + 1, Beats.Zero) : (bar, length);
    }

    /// <summary>The shortest length that is written from a place on.</summary>
    public Beats LeastFrom((int Bar, Beats At) place)
    {
        var division = DivisionOf(place.Bar, (int)place.At.WholeCount(Beats.Quarter));
        return Beats.Of(1, IsPlain(division) ? Math.Max(division, 8) : division);
    }

    /// <summary>A place in a bar with its swing taken out: the inverse of how swung pairs are played.</summary>
    public double Unswung(int bar, double at)
    {
        if (swung[bar] is not { } value) return at;
        var (half, length) = (4.0 / (int)value, bars.All[bar].Length.ToDouble());
        var pair = half * 2;
        var shift = bars.All[bar].IsPickup ? (pair - length % pair) % pair : 0;
        var start = Math.Floor((at + shift + 1e-9) / pair) * pair - shift;
        var into = at - start;
        if (start + pair > length + 1e-9 || start < -1e-9) return at;
        return start + (into < half * 4 / 3 ? into * 3 / 4 : half + (into - half * 4 / 3) * 3 / 2);
    }

    private Beats Plain(double at, int division, bool isStart)
    {
        if (isStart) return Beats.Of((long)Math.Round(at * division), division);
        // An end is where a value of this quarter ends, or as near as is worth writing.
        for (var finer = division; finer <= 16; finer *= 2)
        {
            if (ExactGrid.IsOn(at, finer, tolerance * 1.6)) return Beats.Of((long)Math.Round(at * finer), finer);
        }
        var nearest = Math.Max(division, isExact ? 8 : 4);
        return Beats.Of((long)Math.Round(at * nearest), nearest);
    }
}
