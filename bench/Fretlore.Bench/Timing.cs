using System.Diagnostics;

namespace Fretlore.Bench;

/// <summary>How long a piece of work takes, and what it allocates.</summary>
/// <param name="Median">Milliseconds of half of the runs.</param>
/// <param name="Best">Milliseconds of the quickest run.</param>
/// <param name="Allocated">Bytes of the last run, on the thread that asked for it.</param>
internal readonly record struct Timing(double Median, double Best, long Allocated)
{
    private static readonly TimeSpan Warming = TimeSpan.FromSeconds(2);

    /// <summary>Runs the work until the just-in-time compiler has had its second look at it, then so many times.</summary>
    public static Timing Of(Func<object> way, int runs)
    {
        var warm = Stopwatch.StartNew();
        do way();
        while (warm.Elapsed < Warming);
        var times = new double[runs];
        var allocated = 0L;
        for (var run = 0; run < runs; run++)
        {
            GC.Collect(); // So that a run pays for its own garbage, not for that of the runs before.
            var before = GC.GetAllocatedBytesForCurrentThread();
            var watch = Stopwatch.StartNew();
            GC.KeepAlive(way());
            times[run] = watch.Elapsed.TotalMilliseconds;
            allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        }
        Array.Sort(times);
        return new Timing(times[runs / 2], times[0], allocated);
    }
}
