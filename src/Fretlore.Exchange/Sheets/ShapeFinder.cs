using System.Globalization;
using System.Text;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>Gives names to the chords that come back in a song.</summary>
internal static class ShapeFinder
{
    private const int FewestNotes = 4;
    private const int FewestTimes = 3;
    private const int MostShapes = 30;

    /// <summary>The song with its frequent chords as shapes, named by the chord they are: <c>am7</c>, <c>f-sharp-m</c>, <c>am7-2</c> for another way to play it.</summary>
    public static Song Named(Song song)
    {
        if (song.Shapes.Count > 0) return song;
        var used = new HashSet<string>(StringComparer.Ordinal);
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
            .Select(c => new NamedShape(Unused(NameOf(c.Key, c.Value.Neck), used), c.Key, c.Value.Neck)).ToValueList();
        if (shapes.Count == 0) return song;
        var names = shapes.ToDictionary(s => s.Shape, s => s.Name);
        return song with { Shapes = shapes, Parts = song.Parts.Select(p => p with { Bars = p.Bars.Select(b => Name(b, names)).ToValueList() }).ToValueList() };
    }

    // Its chord in a word: small letters, figures and dashes.
    private static string NameOf(Shape shape, Neck neck)
    {
        Height[] heights = [.. shape.On(neck).Select(s => s.Height)];
        var symbol = ChordNamer.Name(heights).Candidates is [var best, ..] ? best.Symbol : "";
        var name = new StringBuilder();
        for (var i = 0; i < symbol.Length; i++)
        {
            var isFlat = symbol[i] == 'b' && i > 0 && (char.IsAsciiLetterUpper(symbol[i - 1]) || (i + 1 < symbol.Length && char.IsAsciiDigit(symbol[i + 1])));
            name.Append(symbol[i] switch
            {
                '#' or '♯' => "-sharp-",
                '♭' => "-flat-",
                _ when isFlat => "-flat-",
                '/' => "-over-",
                var c when char.IsAsciiLetterOrDigit(c) => char.ToLowerInvariant(c).ToString(),
                _ => "-",
            });
        }
        var text = string.Join('-', name.ToString().Split('-', StringSplitOptions.RemoveEmptyEntries));
        return text.Length > 0 && char.IsAsciiLetterLower(text[0]) ? text : "chord";
    }

    private static string Unused(string name, HashSet<string> used)
    {
        var unused = name;
        for (var n = 2; !used.Add(unused); n++) unused = string.Create(CultureInfo.InvariantCulture, $"{name}-{n}");
        return unused;
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
