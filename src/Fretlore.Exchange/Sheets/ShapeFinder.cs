using System.Globalization;
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

    /// <summary>The song with its frequent chords as shapes; named by their lowest fret's chord they are not, but in the order they come.</summary>
    public static Song Named(Song song)
    {
        if (song.Shapes.Count > 0) return song;
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
            .Select((c, i) => new NamedShape("shape" + (i + 1).ToString(CultureInfo.InvariantCulture), c.Key, c.Value.Neck)).ToValueList();
        if (shapes.Count == 0) return song;
        var names = shapes.ToDictionary(s => s.Shape, s => s.Name);
        return song with { Shapes = shapes, Parts = song.Parts.Select(p => p with { Bars = p.Bars.Select(b => Name(b, names)).ToValueList() }).ToValueList() };
    }

    private static PartBar Name(PartBar bar, Dictionary<Shape, string> names) => bar with
    {
        Strands = bar.Strands.Select(s => s with
        {
            Events = s.Events.Select(e => ShapeOf(e, bar.Neck) is { } shape && names.TryGetValue(shape, out var name) ? e with { Shape = name } : e).ToValueList(),
        }).ToValueList(),
    };

    private static Shape? ShapeOf(Event item, Neck neck)
    {
        if (item.Notes.Count < FewestNotes || item.Notes.Any(n => n.IsTiedFromBefore || n.IsDead || n.Harmonic is not null || n.Bend is not null)) return null;
        var frets = new Fret?[neck.StringCount];
        foreach (var note in item.Notes)
        {
            if (note.String.Value < 1 || note.String.Value > frets.Length) return null;
            frets[frets.Length - note.String.Value] = note.Fret;
        }
        return new Shape(frets.ToValueList());
    }
}
