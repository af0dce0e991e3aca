using System.Collections.Immutable;
using Fretlore.Engraving.Layout.Breaking;
using Fretlore.Engraving.Layout.Model;

namespace Fretlore.Engraving.Layout.Spacing;

/// <summary>How much room a measure takes: signs before it, springs from column to column, signs after it.</summary>
/// <param name="Inside">Signs before it in the middle of a system.</param>
/// <param name="AtStart">Signs before it when it begins a system.</param>
/// <param name="Lead">From those signs, or the bar line, to the first column.</param>
/// <param name="Natural">For each column its distance to the next, or to the bar line, at rest.</param>
/// <param name="Least">The same, as short as the ink allows.</param>
/// <param name="End">Room for a repeat's dots before the bar line.</param>
/// <param name="Warning">Room after the bar line for a new key or metre, when it ends a system.</param>
internal sealed record MeasureSpacing(
    Prefix Inside, Prefix AtStart, double Lead, ImmutableArray<double> Natural, ImmutableArray<double> Least, double End, double Warning)
{
    public double Fixed(bool startsSystem) => (startsSystem ? AtStart : Inside).Width + Lead + End;

    public BreakItem ToBreakItem(Measure measure, bool staysWithNext)
    {
        double natural = 0, least = 0;
        for (var i = 0; i < Natural.Length; i++)
        {
            natural += Math.Max(Natural[i], Least[i]);
            least += Math.Max(Natural[i] * 0.62, Least[i]);
        }
        var room = Fixed(false);
        return new BreakItem(room + natural, room + least, AtStart.Width - Inside.Width, Warning, measure.Section is not null, staysWithNext, measure.StartsSystem);
    }

    /// <summary>The least width the ink allows when the measure has a system to itself.</summary>
    public double LeastAlone => Fixed(true) + Least.Sum() + Warning;
}
