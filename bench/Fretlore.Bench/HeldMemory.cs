namespace Fretlore.Bench;

/// <summary>How much memory a piece of work holds on to.</summary>
internal static class HeldMemory
{
    /// <summary>The most bytes that could not be let go of, looked at all the way through: everything that can be is collected before each look.</summary>
    /// <param name="way">The work; what it makes counts too.</param>
    public static long Most(Func<object> way)
    {
        GC.Collect();
        var (before, most, isDone) = (GC.GetTotalMemory(forceFullCollection: true), 0L, false);
        var watcher = new Thread(() =>
        {
            while (!Volatile.Read(ref isDone))
            {
                GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true);
                most = Math.Max(most, GC.GetTotalMemory(forceFullCollection: false) - before);
                Thread.Sleep(1);
            }
        });
        watcher.Start();
        var made = way();
        Volatile.Write(ref isDone, true);
        watcher.Join();
        GC.KeepAlive(made);
        return most;
    }
}
