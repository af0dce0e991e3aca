using System.Collections.Immutable;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Hands.Shapes;
using Fretlore.Music.Chords;
using Fretlore.Reading;

namespace Fretlore.Engraving.Layout.EndMatter;

/// <summary>The named shapes the shown parts play, as chord frames in the order they come, each with its chord and its name.</summary>
internal sealed class FrameRows
{
    private const double Gap = 3.2;
    private const double RowGap = 1.1;
    private const double NameSize = HouseStyle.SmallSize;

    private readonly Ink ink;
    private readonly ImmutableArray<(ChordFrame Frame, ChordLabel? Chord, string Name)> frames;

    /// <param name="ink">Measures it.</param>
    /// <param name="model">The song as laid out.</param>
    /// <param name="reading">Its reading.</param>
    /// <param name="style">How chord symbols are written.</param>
    /// <param name="withFingers">Whether the easiest fingers stand below each frame.</param>
    public FrameRows(Ink ink, ScoreModel model, SongReading reading, ChordStyle style, bool withFingers)
    {
        this.ink = ink;
        var found = ImmutableArray.CreateBuilder<(ChordFrame, ChordLabel?, string)>();
        foreach (var name in NamesIn(model))
        {
            if (model.Song.Shapes.Items.FirstOrDefault(s => s.Name == name) is not { } shape) continue;
            var chord = reading.ChordOf(name);
            var fingers = withFingers ? ShapeFingers.Of(shape) : null;
            found.Add((new ChordFrame(shape.Shape, fingers ?? [], shape.Neck.Capo), chord is null ? null : ChordLabel.Of(chord.SymbolIn(style), ink), name));
        }
        frames = found.ToImmutable();
    }

    /// <summary>Rows that fit a width; each as indexes from and to.</summary>
    public ImmutableArray<(int First, int End)> Rows(double width)
    {
        var rows = ImmutableArray.CreateBuilder<(int, int)>();
        for (var first = 0; first < frames.Length;)
        {
            var end = first + 1;
            var used = WidthOf(first);
            while (end < frames.Length && used + Gap + WidthOf(end) <= width) used += Gap + WidthOf(end++);
            rows.Add((first, end));
            first = end;
        }
        return rows.ToImmutable();
    }

    public double HeightOf((int First, int End) row) => HouseStyle.ChordSize + Enumerable.Range(row.First, row.End - row.First).Max(i => frames[i].Frame.Height) + NameSize * 1.2 + RowGap;

    /// <param name="pen">Draws them.</param>
    /// <param name="row">Which.</param>
    /// <param name="left">Where the row begins.</param>
    /// <param name="top">Its top.</param>
    public void Draw(Pen pen, (int First, int End) row, double left, double top)
    {
        var x = left;
        var grid = top + HouseStyle.ChordSize;
        var height = Enumerable.Range(row.First, row.End - row.First).Max(i => frames[i].Frame.Height);
        for (var i = row.First; i < row.End; i++)
        {
            var (frame, chord, name) = frames[i];
            var middle = x + WidthOf(i) / 2;
            chord?.Draw(pen, middle - chord.Width / 2, grid - 0.35);
            frame.Draw(pen, middle - frame.GridWidth / 2, grid);
            pen.Text(name, middle, grid + height + NameSize * 0.95, NameSize, Face.SerifItalic, Anchor.Middle);
            x += WidthOf(i) + Gap;
        }
    }

    private double WidthOf(int index)
    {
        var (frame, chord, name) = frames[index];
        return Math.Max(frame.GridWidth + 0.8, Math.Max(chord?.Width ?? 0, ink.TextWidth(name, Face.SerifItalic, NameSize)));
    }

    private static List<string> NamesIn(ScoreModel model)
    {
        var names = new List<string>();
        foreach (var measure in model.Measures)
        {
            foreach (var slot in measure.Parts.SelectMany(p => p.Voices).SelectMany(v => v.Slots))
            {
                if (slot.Event.Shape is { } name && !names.Contains(name)) names.Add(name);
            }
        }
        return names;
    }
}
