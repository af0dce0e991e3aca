using System.Collections.Immutable;
using Fretlore.Listening.Alignment;
using Fretlore.Score;

namespace Fretlore.Workspace.Listening;

/// <summary>When a bar begins in a take.</summary>
/// <param name="Number">Its printed number.</param>
/// <param name="Time">Which time it is played, from 1.</param>
/// <param name="At">From the file's start; null where the take has begun already, or is over.</param>
/// <param name="Unlike">How unlike the sheet it sounds, see <see cref="HeardBar"/>.</param>
public readonly record struct LinedUpBar(int Number, int Time, TimeSpan? At, double Unlike);

/// <summary>A take lined up with its sheet.</summary>
/// <param name="Bars">Every bar in the order played.</param>
/// <param name="Recording">The bars that a sheet has to say, so that those between are found within a few milliseconds by going evenly.</param>
/// <param name="Block">The recording as it stands in a sheet.</param>
/// <param name="Sheet">The sheet with it: in place of what it said of this file before, or after all else.</param>
/// <param name="Unlike">How unlike the sheet the take sounds all in all.</param>
/// <param name="TuningCents">How far it is tuned above A4 = 440.</param>
public sealed record LinedUpTake(ImmutableArray<LinedUpBar> Bars, Recording Recording, string Block, string Sheet, double Unlike, double TuningCents)
{
    // Takes of a song sounded like their sheets by 0.28 to 0.62 when measured, those of other songs by 0.70 and more.
    private const double Other = 0.68;

    // Above the take's own measure.
    private const double OddBar = 0.25;

    /// <summary>Whether it may be a take of something else.</summary>
    public bool SoundsUnlike => Unlike > Other;

    /// <summary>Bars that sound less like the sheet than the others: played otherwise, or not found.</summary>
    public IEnumerable<LinedUpBar> OddBars => Bars.Where(bar => bar.At is not null && bar.Unlike > Math.Max(Other, Unlike + OddBar));
}
