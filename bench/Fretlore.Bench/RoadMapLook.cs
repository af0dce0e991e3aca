using System.Diagnostics;
using System.Globalization;
using Fretlore.Reading;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Takes;
using Fretlore.Tests.RoadMaps;

namespace Fretlore.Bench;

/// <summary>How long a take of a road map takes to make, rules checked and hand planned, over the twenty maps of the tests, from easy to full.</summary>
internal static class RoadMapLook
{
    private const int Seed = 7;
    private const double Wanted = 50;

    public static int Print(TextWriter output, int takes)
    {
        var (all, onTheClock) = (new List<double>(), new List<double>());
        foreach (var map in VariedMaps.All)
        {
            var song = Stages.Song(map.Sheet);
            var use = song.RoadMapUses[0];
            var maker = new TakeMaker(SoloStretch.Of(song, SongReader.Read(song), song.RoadMaps.Items.First(m => m.Name == use.RoadMap), use));
            // Until the just-in-time compiler has had its second look.
            for (var warm = 1; warm <= 30; warm++) maker.Make(Seed + 1, warm, 0.5);
            var times = new List<double>(takes);
            var discarded = 0;
            for (var number = 1; number <= takes; number++)
            {
                var (watch, worked) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
                var take = maker.Make(Seed, number, takes == 1 ? 0.5 : (number - 1.0) / (takes - 1));
                times.Add((Environment.CpuUsage.TotalTime - worked).TotalMilliseconds);
                onTheClock.Add(watch.Elapsed.TotalMilliseconds);
                if (take is null)
                {
                    output.WriteLine($"{map.Name}: no take {number}");
                    return 1;
                }
                discarded += take.Discarded;
            }
            times.Sort();
            all.AddRange(times);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{map.Name,-26} median {times[takes / 2],6:0.0} ms  99 % {times[takes * 99 / 100],6:0.0} ms  slowest {times[^1],6:0.0} ms  thrown away {(double)discarded / takes:0.00} a take"));
        }
        all.Sort();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{all.Count} takes: median {all[all.Count / 2]:0.0} ms, slowest {all[^1]:0.0} ms, {all.Count(t => t > Wanted)} over {Wanted:0} ms (none wanted); on the clock the slowest took {onTheClock.Max():0.0} ms, {onTheClock.Count(t => t > Wanted)} over {Wanted:0} ms"));
        output.WriteLine("Processor time, the just-in-time compiler's and the garbage collector's included: on a busy machine the clock says how busy it is.");
        return 0;
    }
}
