using Fretlore.Engraving.Drawing;

namespace Fretlore.Engraving.Output;

/// <summary>The marks of one page as SVG elements.</summary>
/// <param name="svg">Where they are written.</param>
internal sealed class SvgMarks(SvgText svg)
{
    private readonly SortedSet<int> glyphs = [];

    // How far below their own places the marks of the open groups are.
    private double down;

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
        down += group.Down;
        if (group is { Id: null, Title: null }) Write(group.Marks.AsSpan());
        else WriteNamed(group);
        down -= group.Down;
    }

    private void WriteNamed(Group group)
    {
        svg.Append("<g"u8);
        if (group.Id is { } id) svg.Append(" id=\""u8).Escaped(id).Append('"');
        if (group.Title is { } title) svg.Append(" role=\"graphics-object group\"><title>"u8).Escaped(title).Append("</title>\n"u8);
        else svg.Append(">\n"u8);
        Write(group.Marks.AsSpan());
        svg.Append("</g>\n"u8);
    }

    private void Write(Glyph glyph)
    {
        glyphs.Add(glyph.CodePoint);
        svg.Append("<use href=\"#g"u8).Append(glyph.CodePoint, "X4").Append('"');
        if (glyph.Scale == 1) svg.Append(" x=\""u8).Number(glyph.At.X).Append("\" y=\""u8).Number(glyph.At.Y + down).Append("\"/>\n"u8);
        else svg.Append(" transform=\"translate("u8).Place(Lowered(glyph.At)).Append(")scale("u8).Number(glyph.Scale).Append(")\"/>\n"u8);
    }

    /// <summary>Writes a line, and those right after it that look the same, as one element; returns how many followed.</summary>
    private int WriteLines(Line first, ReadOnlySpan<Mark> next)
    {
        svg.Append("<path d=\""u8);
        Draw(first);
        var followed = 0;
        while (followed < next.Length && next[followed] is Line line && line.Thickness == first.Thickness && line.Style == first.Style)
        {
            Draw(line);
            followed++;
        }

        svg.Append("\" stroke=\"#000\" stroke-width=\""u8).Number(first.Thickness).Append('"');
        if (DashPattern.Of(first) is { } dashes)
        {
            svg.Append(" stroke-dasharray=\""u8).Number(dashes.Dash).Append(' ').Number(dashes.Gap).Append('"');
            if (dashes.Dash == 0) svg.Append(" stroke-linecap=\"round\""u8);
        }

        svg.Append("/>\n"u8);
        return followed;
    }

    private void Draw(Line line)
    {
        svg.Append('M').Place(Lowered(line.From));
        if (line.From.Y == line.To.Y) svg.Append('H').Number(line.To.X);
        else if (line.From.X == line.To.X) svg.Append('V').Number(line.To.Y + down);
        else svg.Append('L').Place(Lowered(line.To));
    }

    private void Write(Polygon polygon)
    {
        var command = "<path d=\"M"u8;
        foreach (var point in polygon.Points)
        {
            svg.Append(command).Place(Lowered(point));
            command = "L"u8;
        }

        svg.Append("Z\"/>\n"u8);
    }

    private void Write(Curve curve)
    {
        svg.Append("<path d=\"M"u8).Place(Lowered(curve.From));
        Cubic(curve.Control1, curve.Control2, curve.To);
        svg.Append("\" fill=\"none\" stroke=\"#000\" stroke-width=\""u8).Number(curve.Thickness).Append("\"/>\n"u8);
    }

    private void Write(Slur slur)
    {
        var shape = SlurShape.Of(slur);
        svg.Append("<path d=\"M"u8).Place(Lowered(slur.From));
        Cubic(shape.Out1, shape.Out2, slur.To);
        Cubic(shape.Back1, shape.Back2, slur.From);
        svg.Append("Z\" stroke=\"#000\" stroke-linejoin=\"round\" stroke-width=\""u8).Number(slur.EndThickness).Append("\"/>\n"u8);
    }

    private void Write(Fill fill)
    {
        var (left, top, right, bottom) = (fill.Box.Left, fill.Box.Top + down, fill.Box.Right, fill.Box.Bottom + down);
        var level = fill.Level();
        svg.Append("<path fill=\"#"u8).Append(level, "x2").Append(level, "x2").Append(level, "x2").Append("\" d=\"M"u8).Number(left).Append(' ')
            .Number(top).Append('H').Number(right).Append('V').Number(bottom).Append('H').Number(left).Append("Z\"/>\n"u8);
    }

    private void Write(Text text)
    {
        svg.Append("<text x=\""u8).Number(text.At.X).Append("\" y=\""u8).Number(text.At.Y + down).Append("\" class=\""u8).Append(SvgFonts.ClassOf(text.Face))
            .Append("\" font-size=\""u8).Number(text.Size).Append('"');
        if (text.Anchor != Anchor.Start) svg.Append(" text-anchor=\""u8).Append(text.Anchor == Anchor.Middle ? "middle"u8 : "end"u8).Append('"');
        if (text.Value.Contains("  ", StringComparison.Ordinal) || text.Value is [' ', ..] or [.., ' ']) svg.Append(" xml:space=\"preserve\""u8);
        svg.Append('>').Escaped(text.Value).Append("</text>\n"u8);
    }

    private void Cubic(Point control1, Point control2, Point to) =>
        svg.Append('C').Place(Lowered(control1)).Append(' ').Place(Lowered(control2)).Append(' ').Place(Lowered(to));

    private Point Lowered(Point point) => point with { Y = point.Y + down };
}
