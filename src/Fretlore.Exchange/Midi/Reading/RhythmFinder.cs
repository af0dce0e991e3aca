using Fretlore.Music;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>How sure a rhythm is that was worked out.</summary>
/// <param name="Moments">How many moments there are.</param>
/// <param name="Moved">How many of them stand off the place they are written at.</param>
/// <param name="UsualSeconds">How far these are moved, in the middle of them.</param>
/// <param name="MostSeconds">How far the furthest is moved.</param>
/// <param name="Sureness">From 0 to 1, the mean over all quarters with notes.</param>
/// <param name="UnsureBars">Bars whose rhythm could well be another one: index and sureness.</param>
internal sealed record RhythmReport(int Moments, int Moved, double UsualSeconds, double MostSeconds, double Sureness, List<(int Bar, double Sureness)> UnsureBars);

/// <summary>Finds the rhythm of a part: for each quarter the division that explains its times best and is simple enough.</summary>
/// <remarks>
/// A division costs what it is unusual, and what it moves its notes, as if players were off by a normal distribution; the differences of
/// these costs are odds, from which comes how sure it is. Quarters that a file has to the tick are taken as they stand.
/// </remarks>
internal sealed class RhythmFinder(MidiBars bars, WrittenRhythm rhythm, Func<long, double> secondsAt, bool isExact)
{
    // How far players are off, in seconds, and the fifth of what is divided that they are off at most (choices of this project).
    private const double SpreadSeconds = 0.018;
    private const double ClashCost = 14;
    private const double UnsureBelow = 0.8;

    // What divisions cost before any note is heard: how rare they are in songs, as natural logarithms (a choice of this project).
    private static readonly (int Division, double Cost)[] Costs = [(1, 0), (2, 0.5), (4, 1.5), (3, 2.5), (8, 5.5), (6, 5), (5, 9), (12, 9), (7, 10), (16, 11)];

    private readonly double tolerance = ExactGrid.Tolerance(bars.TicksPerQuarter);

    /// <summary>Writes each moment's place, and says how sure they are.</summary>
    public RhythmReport Write(List<MidiMoment> moments)
    {
        var sure = new List<(int Bar, double Sureness)>();
        // A moment right before a quarter may belong to it.
        var windows = moments.GroupBy(m => WindowOf(m.Tick)).OrderBy(g => g.Key).ToList();
        var used = Costs.ToDictionary(c => c.Division, _ => 0);
        for (var pass = 0; pass < (isExact ? 1 : 2); pass++)
        {
            sure.Clear();
            foreach (var window in windows)
            {
                var places = window.Select(m => bars.Place(m.Tick).At).ToList();
                var (division, sureness) = Divide(window.Key.Bar, window.Key.Quarter, places, SecondsAQuarter(window.First().Tick), used, pass);
                rhythm.Divide(window.Key.Bar, window.Key.Quarter, division);
                sure.Add((window.Key.Bar, sureness));
            }
            foreach (var division in used.Keys) used[division] = windows.Count(w => rhythm.DivisionOf(w.Key.Bar, w.Key.Quarter) == division);
        }
        foreach (var moment in moments) (moment.Bar, moment.At) = rhythm.Place(moment.Tick, isStart: true);
        return Report(moments, sure);
    }

    private (int Bar, int Quarter) WindowOf(long tick)
    {
        var (bar, at) = bars.Place(tick);
        return (bar, (int)Math.Floor(at + tolerance));
    }

    private double SecondsAQuarter(long tick) => Math.Max(1e-3, secondsAt(tick + (long)bars.TicksPerQuarter) - secondsAt(tick));

    private (int Division, double Sureness) Divide(int bar, int quarter, List<double> places, double seconds, Dictionary<int, int> used, int pass)
    {
        if (isExact && Exact(bar, places) is { } exact) return (exact, 1);
        var total = used.Values.Sum() + Costs.Length;
        var ways = new List<(int Division, double Cost, string Places)>();
        foreach (var (division, rarity) in Costs)
        {
            var cost = rarity + (pass > 0 ? -Math.Log((used[division] + 1.0) / total) / 2 : 0);
            var written = new List<long>();
            foreach (var at in places)
            {
                var straight = WrittenRhythm.IsPlain(division) ? rhythm.Unswung(bar, at) : at;
                var off = (straight - Math.Round(straight * division) / division) * seconds / SpreadSeconds;
                cost += off * off / 2;
                written.Add((long)Math.Round(straight * division));
            }
            cost += ClashCost * (written.Count - written.Distinct().Count());
            ways.Add((division, cost, string.Join(' ', written.Select(w => Beats.Of(w - (long)quarter * division, division)))));
        }
        var best = ways.MinBy(w => w.Cost);
        // Ways that come to the same places are one.
        var other = ways.Where(w => w.Places != best.Places).Select(w => w.Cost).DefaultIfEmpty(best.Cost + 20).Min();
        return (best.Division, 1 / (1 + Math.Exp(best.Cost - other)));
    }

    private int? Exact(int bar, List<double> places)
    {
        // Three in a quarter are a triplet also where pairs are swung.
        if (rhythm.IsSwung(bar) && Has(places, 1.0 / 3) && Has(places, 2.0 / 3) && places.TrueForAll(p => ExactGrid.IsOn(p, 3, tolerance))) return 3;
        foreach (var plain in (ReadOnlySpan<bool>)[true, false])
        {
            foreach (var division in ExactGrid.Divisions)
            {
                // With swing plain values come first; else the simplest division does.
                var isPlain = WrittenRhythm.IsPlain(division);
                if (rhythm.IsSwung(bar) && isPlain != plain) continue;
                if (places.TrueForAll(p => ExactGrid.IsOn(isPlain ? rhythm.Unswung(bar, p) : p, division, isPlain && rhythm.IsSwung(bar) ? tolerance * 1.6 : tolerance))) return division;
            }
        }
        return null;
    }

    private bool Has(List<double> places, double fraction) => places.Exists(p => Math.Abs(p % 1 - fraction) <= tolerance);

    private RhythmReport Report(List<MidiMoment> moments, List<(int Bar, double Sureness)> sure)
    {
        var moved = new List<double>();
        foreach (var moment in moments)
        {
            var (bar, at) = bars.Place(moment.Tick);
            var written = moment.Bar == bar ? moment.At.ToDouble() : bars.All[bar].Length.ToDouble();
            var isPlain = WrittenRhythm.IsPlain(rhythm.DivisionOf(bar, (int)Math.Floor(at + tolerance)));
            var off = Math.Abs((isPlain ? rhythm.Unswung(bar, at) : at) - written);
            if (off > tolerance * 1.6) moved.Add(off * SecondsAQuarter(moment.Tick));
        }
        moved.Sort();
        var unsure = sure.GroupBy(s => s.Bar).Select(g => (Bar: g.Key, Sureness: g.Min(s => s.Sureness))).Where(b => b.Sureness < UnsureBelow).ToList();
        return new RhythmReport(
            moments.Count, moved.Count, moved.Count > 0 ? moved[moved.Count / 2] : 0, moved.Count > 0 ? moved[^1] : 0,
            sure.Count > 0 ? sure.Average(s => s.Sureness) : 1, unsure);
    }
}
