using System.Collections.Immutable;
using Fretlore.Exchange.Reports;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>What became of a file that was to be read: a song, or a reason why not.</summary>
public abstract record ImportResult
{
    private ImportResult()
    {
    }

    /// <summary>The song, and each thing that was not carried over as it was.</summary>
    public sealed record Made(Song Song, ImmutableArray<Remark> Remarks) : ImportResult
    {
        /// <summary>Places of a text that had to be guessed, or could not be read.</summary>
        public ImmutableArray<TextFinding> Findings { get; init; } = [];
    }

    /// <summary>The file is not what it should be, or more than is taken.</summary>
    /// <param name="Reason">What is wrong, in one sentence.</param>
    /// <param name="Remedy">What to do.</param>
    public sealed record Refused(string Reason, string Remedy) : ImportResult;
}

/// <summary>A file can't be read further; caught where reading begins and never seen outside.</summary>
internal sealed class RefusedFileException(string reason, string remedy) : Exception(reason)
{
    public string Remedy { get; } = remedy;
}

/// <summary>How much is taken from one file.</summary>
internal static class ImportLimits
{
    public const int MostBytes = 64 * 1024 * 1024;

    public const int DeepestElement = 64;

    public const int MostBars = 10_000;

    public const int MostNotes = 250_000;

    public const int MostParts = 64;
}
