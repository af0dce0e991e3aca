using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>Gives names to the chords that come back in a song.</summary>
internal static class ShapeFinder
{
    private const int FewestNotes = 4;
    private const int FewestTimes = 3;
    private const int MostShapes = 30;

    /// <summary>The song with its frequent chords as shapes beside those it has, named by the chord they are.</summary>
    public static Song Named(Song song)
    {
        var used = song.Shapes.Select(s => s.Name).ToHashSet(StringComparer.Ordinal);
        var counts = new Dictionary<Shape, (int Count, int First, Neck Neck)>();
        var order = 0;
        foreach (var bar in song.Parts.SelectMany(p => p.Bars))
        {
            foreach (var item in bar.Strands.SelectMany(s => s.Events))
            {
                if (ShapeOf(item, bar.Neck) is not { } shape) continue;
                counts[shape] = counts.TryGetValue(shape, out var seen) ? seen with { Count = seen.Count + 1 } : (1, order++, bar.Neck);
            }
        }
        var shapes = counts.Where(c => c.Value.Count >= FewestTimes).OrderByDescending(c => c.Value.Count).ThenBy(c => c.Value.First).Take(MostShapes)
            .OrderBy(c => c.Value.First)
            .Select(c => new NamedShape(ShapeNames.Unused(ShapeNames.Of(c.Key, c.Value.Neck), used), c.Key, c.Value.Neck)).ToValueList();
        if (shapes.Count == 0) return song;
        var names = shapes.ToDictionary(s => s.Shape, s => s.Name);
        return song with { Shapes = [.. song.Shapes, .. shapes], Parts = song.Parts.Select(p => p with { Bars = p.Bars.Select(b => Name(b, names)).ToValueList() }).ToValueList() };
    }

    private static PartBar Name(PartBar bar, Dictionary<Shape, string> names) => bar with
    {
        Strands = bar.Strands.Select(s => s with
        {
            Events = s.Events.Select(e => ShapeOf(e, bar.Neck) is { } shape && names.TryGetValue(shape, out var name) ? e with { Shape = name } : e).ToValueList(),
        }).ToValueList(),
    };

    private static Shape? ShapeOf(Event item, Neck neck) =>
        item.Shape is not null || item.Notes.Count < FewestNotes || item.Notes.Any(n => n.IsTiedFromBefore || n.IsDead || n.Harmonic is not null || n.Bend is not null)
            ? null : ShapeNames.ShapeOf(item.Notes, neck);
}
