using System.Collections.Immutable;
using Fretlore.Music;

namespace Fretlore.Engraving.Drawing;

/// <summary>Carries marks down a page, for readers that ask where they are.</summary>
internal static class LoweredMarks
{
    public static ValueList<Mark> LoweredBy(this ValueList<Mark> marks, double down) =>
        new(ImmutableArray.CreateRange(marks.Items, static (mark, down) => mark.LoweredBy(down), down));

    private static Mark LoweredBy(this Mark mark, double down)
    {
        var by = new Point(0, down);
        return mark switch
        {
            Glyph g => g with { At = g.At + by },
            Line l => l with { From = l.From + by, To = l.To + by },
            Text t => t with { At = t.At + by },
            Fill f => f with { Box = f.Box with { Top = f.Box.Top + down, Bottom = f.Box.Bottom + down } },
            Slur s => s with { From = s.From + by, Control1 = s.Control1 + by, Control2 = s.Control2 + by, To = s.To + by },
            Curve c => c with { From = c.From + by, Control1 = c.Control1 + by, Control2 = c.Control2 + by, To = c.To + by },
            Polygon p => new Polygon(new(ImmutableArray.CreateRange(p.Points.Items, static (point, by) => point + by, by))),
            Group g => g with { Down = g.Down + down },
            _ => throw new NotSupportedException($"{mark.GetType().Name} has no place to lower."),
        };
    }
}
