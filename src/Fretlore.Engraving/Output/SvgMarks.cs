using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Output;

/// <summary>The marks of one page as SVG elements.</summary>
/// <param name="svg">Where they are written.</param>
internal sealed class SvgMarks(SvgText svg)
{
    private readonly SortedSet<int> glyphs = [];

    /// <summary>Code points of the music glyphs that the elements refer to.</summary>
    public IEnumerable<int> Glyphs => glyphs;

    public void Write(ReadOnlySpan<Mark> marks)
    {
        for (var i = 0; i < marks.Length; i++)
        {
            switch (marks[i])
            {
                case Group group: Write(group); break;
                case Glyph glyph: Write(glyph); break;
                case Line line: i += WriteLines(line, marks[(i + 1)..]); break;
                case Polygon polygon: Write(polygon); break;
                case Curve curve: Write(curve); break;
                case Slur slur: Write(slur); break;
                case Fill fill: Write(fill); break;
                case Text text: Write(text); break;
                case var other: throw new NotSupportedException($"SVG has no way to write a {other.GetType().Name}.");
            }
        }
    }

    private void Write(Group group)
    {
        svg.Append("<g");
        if (group.Id is { } id) svg.Append(" id=\"").Escaped(id).Append('"');
        if (group.Title is { } title) svg.Append(" role=\"graphics-object group\"><title>").Escaped(title).Append("</title>\n");
        else svg.Append(">\n");
        Write(group.Marks.AsSpan());
        svg.Append("</g>\n");
    }

    private void Write(Glyph glyph)
    {
        glyphs.Add(glyph.CodePoint);
        svg.Append("<use href=\"#g").Append(glyph.CodePoint, "X4").Append('"');
        if (glyph.Scale == 1) svg.Append(" x=\"").Number(glyph.At.X).Append("\" y=\"").Number(glyph.At.Y).Append("\"/>\n");
        else svg.Append(" transform=\"translate(").Place(glyph.At).Append(")scale(").Number(glyph.Scale).Append(")\"/>\n");
    }

    /// <summary>Writes a line, and those right after it that look the same, as one element; returns how many followed.</summary>
    private int WriteLines(Line first, ReadOnlySpan<Mark> next)
    {
        svg.Append("<path d=\"");
        Draw(first);
        var followed = 0;
        while (followed < next.Length && next[followed] is Line line && line.Thickness == first.Thickness && line.Style == first.Style)
        {
            Draw(line);
            followed++;
        }

        svg.Append("\" stroke=\"#000\" stroke-width=\"").Number(first.Thickness).Append('"');
        if (DashPattern.Of(first) is { } dashes)
        {
            svg.Append(" stroke-dasharray=\"").Number(dashes.Dash).Append(' ').Number(dashes.Gap).Append('"');
            if (dashes.Dash == 0) svg.Append(" stroke-linecap=\"round\"");
        }

        svg.Append("/>\n");
        return followed;
    }

    private void Draw(Line line)
    {
        svg.Append('M').Place(line.From);
        if (line.From.Y == line.To.Y) svg.Append('H').Number(line.To.X);
        else if (line.From.X == line.To.X) svg.Append('V').Number(line.To.Y);
        else svg.Append('L').Place(line.To);
    }

    private void Write(Polygon polygon)
    {
        var command = "<path d=\"M";
        foreach (var point in polygon.Points)
        {
            svg.Append(command).Place(point);
            command = "L";
        }

        svg.Append("Z\"/>\n");
    }

    private void Write(Curve curve)
    {
        svg.Append("<path d=\"M").Place(curve.From);
        Cubic(curve.Control1, curve.Control2, curve.To);
        svg.Append("\" fill=\"none\" stroke=\"#000\" stroke-width=\"").Number(curve.Thickness).Append("\"/>\n");
    }

    private void Write(Slur slur)
    {
        var shape = SlurShape.Of(slur);
        svg.Append("<path d=\"M").Place(slur.From);
        Cubic(shape.Out1, shape.Out2, slur.To);
        Cubic(shape.Back1, shape.Back2, slur.From);
        svg.Append("Z\" stroke=\"#000\" stroke-linejoin=\"round\" stroke-width=\"").Number(slur.EndThickness).Append("\"/>\n");
    }

    private void Write(Fill fill)
    {
        var (left, top, right, bottom) = (fill.Box.Left, fill.Box.Top, fill.Box.Right, fill.Box.Bottom);
        var level = fill.Level();
        svg.Append("<path fill=\"#").Append(level, "x2").Append(level, "x2").Append(level, "x2").Append("\" d=\"M").Number(left).Append(' ')
            .Number(top).Append('H').Number(right).Append('V').Number(bottom).Append('H').Number(left).Append("Z\"/>\n");
    }

    private void Write(Text text)
    {
        svg.Append("<text x=\"").Number(text.At.X).Append("\" y=\"").Number(text.At.Y).Append("\" class=\"").Append(SvgFonts.ClassOf(text.Face))
            .Append("\" font-size=\"").Number(text.Size).Append('"');
        if (text.Anchor != Anchor.Start) svg.Append(" text-anchor=\"").Append(text.Anchor == Anchor.Middle ? "middle" : "end").Append('"');
        if (text.Value.Contains("  ", StringComparison.Ordinal) || text.Value is [' ', ..] or [.., ' ']) svg.Append(" xml:space=\"preserve\"");
        svg.Append('>').Escaped(text.Value).Append("</text>\n");
    }

    private void Cubic(Point control1, Point control2, Point to) =>
        svg.Append('C').Place(control1).Append(' ').Place(control2).Append(' ').Place(to);
}
