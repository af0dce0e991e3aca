using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;

namespace Fretlore.Sound;

/// <summary>Pieces of work done side by side on all cores.</summary>
public static class SideBySide
{
    /// <summary>Does them all.</summary>
    /// <param name="count">How many there are.</param>
    /// <param name="work">Does one, by its number from 0.</param>
    /// <param name="cancel">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <remarks>What goes wrong in one is thrown as it is: a full disk before anything else.</remarks>
    public static void Run(int count, Action<int> work, CancellationToken cancel)
    {
        try
        {
            // Handed out one by one: pieces are long, and whoever is free takes the next.
            var pieces = Partitioner.Create(Enumerable.Range(0, count), EnumerablePartitionerOptions.NoBuffering);
            Parallel.ForEach(pieces, new ParallelOptions { CancellationToken = cancel }, work);
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.InnerExceptions.FirstOrDefault(e => e is IOException or UnauthorizedAccessException) ?? several.InnerExceptions[0]);
        }
    }
}
