using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Makes named shapes of those a file draws, and names the chords that are played with them.</summary>
internal sealed class ShapeNaming(Remarks remarks, bool isOwn)
{
    private const int MostShapes = 100;

    private readonly List<NamedShape> shapes = [];
    private readonly HashSet<string> names = new(StringComparer.Ordinal);

    /// <param name="song">The song so far.</param>
    /// <param name="stated">For each of its parts what is drawn there, in order.</param>
    public Song Named(Song song, IReadOnlyList<IReadOnlyList<StatedShape>> stated)
    {
        if (stated.All(s => s.Count == 0)) return song;
        var drawn = song.Parts.Select((p, i) => Known(p, i < stated.Count ? stated[i] : [])).ToList();
        if (shapes.Count == 0) return song;
        return song with { Shapes = shapes.ToValueList(), Parts = song.Parts.Select((p, i) => Named(p, drawn[i])).ToValueList() };
    }

    // The shapes of a part by bar.
    private ILookup<int, (Beats At, NamedShape Shape)> Known(Part part, IReadOnlyList<StatedShape> stated)
    {
        var known = new List<(int Bar, Beats At, NamedShape Shape)>();
        foreach (var shape in stated)
        {
            var bar = shape.Bar + 1;
            if (shape.Shape.LowToHigh.Count != part.Neck.StringCount)
                remarks.Add(RemarkKind.LeftOut, "A chord diagram for another number of strings than the part has.", part.Title, bar);
            else if (shape.Shape.LowToHigh.Items.Any(f => f is { } fret && fret.Number > part.Neck.HighestFret.Number))
                remarks.Add(RemarkKind.LeftOut, "A chord diagram with a fret that the neck does not have.", part.Title, bar);
            else if (Of(shape, part.Neck) is { } named) known.Add((shape.Bar, shape.At, named));
            else remarks.Add(RemarkKind.LeftOut, "A chord diagram beyond the hundredth of its own.", part.Title, bar);
            if (shape.HasBarreWithoutFinger) remarks.Add(RemarkKind.Changed, "A barre of a chord diagram does not say its finger: its frets are kept.", part.Title, bar);
        }
        return known.ToLookup(k => k.Bar, k => (k.At, k.Shape));
    }

    private NamedShape? Of(StatedShape stated, Neck neck)
    {
        if (shapes.Find(s => s.Shape == stated.Shape && s.Fingers == stated.Fingers && (stated.Name is null || s.Name == stated.Name)) is { } known) return known;
        if (shapes.Count >= MostShapes) return null;
        var name = ShapeNames.Unused(stated.Name ?? (stated.Symbol is { } symbol ? ShapeNames.OfChord(symbol) : ShapeNames.Of(stated.Shape, neck)), names);
        shapes.Add(new NamedShape(name, stated.Shape, neck) { Fingers = stated.Fingers });
        return shapes[^1];
    }

    private Part Named(Part part, ILookup<int, (Beats At, NamedShape Shape)> drawn)
    {
        var byFrets = shapes.Where(s => s.Shape.LowToHigh.Count == part.Neck.StringCount).GroupBy(s => s.Shape).ToDictionary(g => g.Key, g => g.First());
        NamedShape? current = null;
        return part with { Bars = part.Bars.Select((b, i) => b with { Strands = b.Strands.Select(s => Named(s, i)).ToValueList() }).ToValueList() };

        Strand Named(Strand strand, int bar)
        {
            // Outside its bar, a drawn shape names only chords that sound all of it.
            NamedShape? picked = null;
            var events = new List<Event>();
            foreach (var item in strand.Events)
            {
                foreach (var (_, shape) in drawn[bar].Where(d => d.At == item.Start)) current = picked = shape;
                var whole = Whole(item, part.Neck, current, byFrets);
                if (whole is null && !item.IsRest && (picked is null || !IsPicked(item, picked))) picked = null;
                events.Add((whole ?? (item.IsRest ? null : picked)) is { } named ? With(item, named) : item);
            }
            return strand with { Events = events.ToValueList() };
        }
    }

    private NamedShape? Whole(Event item, Neck neck, NamedShape? current, Dictionary<Shape, NamedShape> byFrets)
    {
        if (item.Notes.Count < 2 || item.Notes.Any(n => n.IsTiedFromBefore || n.IsDead || n.Harmonic is not null) || ShapeNames.ShapeOf(item.Notes, neck) is not { } shape) return null;
        var named = current?.Shape == shape ? current : byFrets.GetValueOrDefault(shape);
        return named is not null && item.Notes.All(n => HasFinger(n, named)) ? named : null;
    }

    // Strings of a held shape one after another, left ringing: at its frets, or a single one at another.
    private bool IsPicked(Event item, NamedShape shape) => item.Notes.All(n =>
        shape.Shape.LowToHigh[^n.String.Value] is { } fret && (n.IsTiedFromBefore || (n.LetsRing && (n.Fret == fret || item.Notes.Count == 1) && HasFinger(n, shape))));

    // A file of another program says fingers in the diagram only.
    private bool HasFinger(Note note, NamedShape shape)
    {
        var finger = shape.FingerOf(note.String, note.Fret);
        return isOwn ? note.Finger == finger : note.Finger is null || finger is null || note.Finger == finger;
    }

    private static Event With(Event item, NamedShape shape) => item with
    {
        Shape = shape.Name,
        Notes = item.Notes.Select(n => n.IsTiedFromBefore ? n : n with { Finger = n.Finger ?? shape.FingerOf(n.String, n.Fret) }).ToValueList(),
    };
}
