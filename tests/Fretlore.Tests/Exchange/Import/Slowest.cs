using System.Diagnostics;

namespace Fretlore.Tests.Exchange.Import;

/// <summary>The longest that any of many files took to read. A slow one is read again, since a busy machine makes all of them wait.</summary>
internal sealed class Slowest
{
    private const long Slow = 1000;

    private readonly Lock guard = new();

    public long Milliseconds { get; private set; }

    public T Of<T>(Func<T> read)
    {
        var (result, took) = Once(read);
        for (var again = 0; again < 3 && took > Slow; again++) took = Math.Min(took, Once(read).Took);
        lock (guard) Milliseconds = Math.Max(Milliseconds, took);
        return result;
    }

    private static (T Result, long Took) Once<T>(Func<T> read)
    {
        var watch = Stopwatch.StartNew();
        return (read(), watch.ElapsedMilliseconds);
    }
}
