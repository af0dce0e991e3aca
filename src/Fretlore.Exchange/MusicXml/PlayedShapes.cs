using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.MusicXml;

/// <summary>Where a part's chord frames stand: where another shape begins to be played, and where one begins to be picked string by string.</summary>
internal sealed class PlayedShapes(Song song)
{
    private readonly Dictionary<string, NamedShape> shapes = song.Shapes.ToDictionary(s => s.Name);
    private string? last;

    /// <summary>The shapes to be drawn in the next bar, by their time in it, on the neck of the bar.</summary>
    public Dictionary<Beats, NamedShape> Next(PartBar content)
    {
        var starts = new Dictionary<Beats, NamedShape>();
        if (shapes.Count == 0) return starts;
        foreach (var strand in content.Strands)
        {
            string? before = null;
            foreach (var item in strand.Events.Where(e => !e.IsRest))
            {
                if (item.Shape is { } name && shapes.TryGetValue(name, out var shape))
                {
                    var isPicked = item.Notes.Count < shape.Shape.LowToHigh.Count(f => f is not null);
                    if (name != last || (isPicked && before != name)) starts.TryAdd(item.Start, shape with { Neck = content.Neck });
                    last = name;
                }
                before = item.Shape;
            }
        }
        return starts;
    }
}
