using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>What a piece of ink is, as far as it matters for what may touch it.</summary>
internal enum InkKind
{
    /// <summary>A glyph or a text.</summary>
    Sign,

    /// <summary>A piece of a slur, a bend, a slanted, dashed or bracket line, or an arrow head.</summary>
    Stroke,

    Beam,
    Stem,
    BarLine,

    /// <summary>A staff line, a string's line, a ledger line, a frame: signs stand on them.</summary>
    Ground,
}

/// <summary>A piece of ink.</summary>
/// <param name="Path">The groups it is in and what it is.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Ink">The box around it.</param>
/// <param name="Slices">What of the box is inked, as thin slices from a place on; empty for all of it.</param>
/// <param name="At">The place the slices count from.</param>
/// <param name="Scale">The size they are drawn at.</param>
internal readonly record struct InkPiece(string Path, InkKind Kind, Box Ink, ImmutableArray<Box> Slices = default, Point At = default, double Scale = 1)
{
    /// <summary>The inked boxes on the page.</summary>
    public IEnumerable<Box> Boxes()
    {
        if (Slices.IsDefaultOrEmpty) return [Ink];
        var (at, scale) = (At, Scale);
        return Slices.Select(s => new Box(at.X + s.Left * scale, at.Y + s.Top * scale, at.X + s.Right * scale, at.Y + s.Bottom * scale));
    }
}

/// <summary>One more reader of a drawing: lists its ink as small boxes; curves and slanted lines in pieces.</summary>
internal static class InkBoxes
{
    private const int Pieces = 32;

    private static readonly ConcurrentDictionary<FontLibrary, OutlineSlices> SlicesOf = new();

    public static IEnumerable<InkPiece> Of(DrawnPage page, FontLibrary fonts)
    {
        var slices = SlicesOf.GetOrAdd(fonts, f => new OutlineSlices(f));
        return page.Marks.SelectMany(m => Of(m, "", fonts, slices));
    }

    /// <summary>Whether two pieces share more than a hair's breadth of real ink.</summary>
    public static bool Overlap(InkPiece a, InkPiece b, double allowed)
    {
        if (!Overlap(a.Ink, b.Ink, allowed)) return false;
        if (a.Slices.IsDefaultOrEmpty && b.Slices.IsDefaultOrEmpty) return true;
        var others = b.Boxes().Where(box => Overlap(a.Ink, box, allowed)).ToArray();
        return others.Length > 0 && a.Boxes().Any(box => others.Any(other => Overlap(box, other, allowed)));
    }

    /// <summary>Whether two boxes share more than a hair's breadth.</summary>
    public static bool Overlap(Box a, Box b, double allowed = 0.02) =>
        a.Left < b.Right - allowed && b.Left < a.Right - allowed && a.Top < b.Bottom - allowed && b.Top < a.Bottom - allowed;

    private static IEnumerable<InkPiece> Of(Mark mark, string path, FontLibrary fonts, OutlineSlices slices)
    {
        switch (mark)
        {
            case Group group:
                return group.InPlace.SelectMany(m => Of(m, group.Id is null ? path : path + "/" + group.Id, fonts, slices));
            case Glyph glyph:
                var ink = fonts.Music.InkOf(glyph.CodePoint);
                return [new(path + " glyph " + glyph.CodePoint.ToString("X4", CultureInfo.InvariantCulture), InkKind.Sign, new Box(
                    glyph.At.X + ink.Left * glyph.Scale, glyph.At.Y + ink.Top * glyph.Scale, glyph.At.X + ink.Right * glyph.Scale, glyph.At.Y + ink.Bottom * glyph.Scale), slices.Of(glyph.CodePoint), glyph.At, glyph.Scale)];
            case Text text:
                var width = fonts.Texts.WidthOf(text.Value, text.Face, text.Size);
                var left = text.At.X - text.Anchor switch { Anchor.Start => 0, Anchor.Middle => width / 2, _ => width };
                var drawn = slices.Of(text.Value, text.Face, text.Size);
                if (drawn.IsEmpty) return [];
                var box = new Box(left + drawn.Min(d => d.Left), text.At.Y + drawn.Min(d => d.Top), left + drawn.Max(d => d.Right), text.At.Y + drawn.Max(d => d.Bottom));
                return [new(path + " text " + text.Value, InkKind.Sign, box, drawn, new Point(left, text.At.Y))];
            case Line line:
                return Along(path + " line", KindOf(line, fonts), line.From, line.From, line.To, line.To, line.Thickness, line.From.X == line.To.X || line.From.Y == line.To.Y ? 1 : Pieces);
            case Curve curve:
                return Along(path + " curve", InkKind.Stroke, curve.From, curve.Control1, curve.Control2, curve.To, curve.Thickness, Pieces);
            case Slur slur:
                return Along(path + " slur", InkKind.Stroke, slur.From, slur.Control1, slur.Control2, slur.To, slur.MiddleThickness, Pieces);
            case Polygon { Points: { Count: 4 } corners }:
                // A beam: its corners are upper left, upper right, lower right, lower left.
                Point from = new(corners[0].X, (corners[0].Y + corners[3].Y) / 2), to = new(corners[1].X, (corners[1].Y + corners[2].Y) / 2);
                return Along(path + " beam", InkKind.Beam, from, from, to, to, corners[3].Y - corners[0].Y, Pieces);
            case Polygon polygon:
                return [new(path + " arrow", InkKind.Stroke, new Box(
                    polygon.Points.Min(p => p.X), polygon.Points.Min(p => p.Y), polygon.Points.Max(p => p.X), polygon.Points.Max(p => p.Y)))];
            default:
                return [];
        }
    }

    private static InkKind KindOf(Line line, FontLibrary fonts)
    {
        if (line.Style != LineStyle.Solid) return InkKind.Stroke;
        if (line.From.X == line.To.X)
        {
            if (line.Thickness == fonts.Music.Default("stemThickness")) return InkKind.Stem;
            return line.Thickness == fonts.Music.Default("thickBarlineThickness") || line.Thickness == fonts.Music.Default("thinBarlineThickness") ? InkKind.BarLine : InkKind.Ground;
        }
        return line.From.Y == line.To.Y ? InkKind.Ground : InkKind.Stroke;
    }

    private static IEnumerable<InkPiece> Along(string path, InkKind kind, Point a, Point b, Point c, Point d, double thickness, int pieces)
    {
        var half = thickness / 2;
        var last = a;
        for (var i = 1; i <= pieces; i++)
        {
            double t = i / (double)pieces, u = 1 - t;
            var next = new Point(
                u * u * u * a.X + 3 * u * u * t * b.X + 3 * u * t * t * c.X + t * t * t * d.X,
                u * u * u * a.Y + 3 * u * u * t * b.Y + 3 * u * t * t * c.Y + t * t * t * d.Y);
            // Beams are cut upright; other lines across their course.
            var aside = kind == InkKind.Beam || (a.Y == d.Y && b.Y == a.Y) ? 0 : half;
            var over = a.X == d.X ? 0 : half;
            yield return new(path, kind, new Box(
                Math.Min(last.X, next.X) - aside, Math.Min(last.Y, next.Y) - over, Math.Max(last.X, next.X) + aside, Math.Max(last.Y, next.Y) + over));
            last = next;
        }
    }
}
