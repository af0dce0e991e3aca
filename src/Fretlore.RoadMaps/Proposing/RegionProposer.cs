using System.Collections.Immutable;
using Fretlore.Guitar;
using Fretlore.Score;

namespace Fretlore.RoadMaps.Proposing;

/// <summary>Finds where on the neck takes wander: which strings, and a place or a way along the frets.</summary>
internal static class RegionProposer
{
    // A hand that reaches over this many frets still stands in one place.
    private const int OnePlace = FretWindow.HandSpan + 1;

    private const int Beyond = 2;

    public static ImmutableArray<RoadMapRule> Find(TakeSet takes)
    {
        var notes = takes.Free.SelectMany(m => m.Notes.Select(n => (m.Bar, n.String, n.Fret))).ToList();
        if (notes.Count == 0) return [];
        var rules = ImmutableArray.CreateBuilder<RoadMapRule>();
        var (highest, lowest) = (notes.Min(n => n.String.Value), notes.Max(n => n.String.Value));
        if (highest > 1 || lowest < takes.Stretch.Part.Neck.StringCount) rules.Add(new StringsRule(new StringNumber(highest), new StringNumber(lowest)));
        var (low, high) = (notes.Min(n => n.Fret.Number), notes.Max(n => n.Fret.Number));
        rules.Add(high - low >= OnePlace && Way(takes, notes.Select(n => (n.Bar, n.Fret.Number)).ToLookup(n => n.Bar, n => n.Number), low, high) is { } way
            ? way : new FretsRule(new Fret(low), new Fret(high), false));
        return rules.ToImmutable();
    }

    // The shortest way whose windows hold every note.
    private static FretsRule? Way(TakeSet takes, ILookup<int, int> frets, int low, int high)
    {
        FretsRule? best = null;
        // A way may begin and end a little beyond what was played.
        var most = Math.Min(high + Beyond, takes.Stretch.Part.Neck.HighestFret.Number);
        for (var from = Math.Max(0, low - Beyond); from <= most; from++)
        {
            for (var to = Math.Max(0, low - Beyond); to <= most; to++)
            {
                var length = Math.Abs(from - to);
                if (length < FretWindow.HandSpan || (best is not null && length >= Math.Abs(best.From.Number - best.To.Number))) continue;
                var rule = new FretsRule(new Fret(from), new Fret(to), true);
                if (frets.All(bar => bar.All(fret => FretWindow.Of(rule, bar.Key, takes.Use.BarCount).Contains(fret)))) best = rule;
            }
        }
        return best;
    }
}
