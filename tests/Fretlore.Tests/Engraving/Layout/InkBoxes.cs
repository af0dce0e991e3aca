using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>The start of a collision checker: one more reader of a drawing, which lists the ink box of every mark with the groups it is in.</summary>
internal static class InkBoxes
{
    public static IEnumerable<(string Path, Box Ink)> Of(DrawnPage page, FontLibrary fonts) => page.Marks.SelectMany(m => Of(m, "", fonts));

    /// <summary>Whether two boxes share more than a hair's breadth.</summary>
    public static bool Overlap(Box a, Box b, double allowed = 0.02) =>
        a.Left < b.Right - allowed && b.Left < a.Right - allowed && a.Top < b.Bottom - allowed && b.Top < a.Bottom - allowed;

    private static IEnumerable<(string, Box)> Of(Mark mark, string path, FontLibrary fonts)
    {
        switch (mark)
        {
            case Group group:
                return group.Marks.SelectMany(m => Of(m, group.Id is null ? path : path + "/" + group.Id, fonts));
            case Glyph glyph:
                var ink = fonts.Music.InkOf(glyph.CodePoint);
                return [(path + " glyph " + glyph.CodePoint.ToString("X4", System.Globalization.CultureInfo.InvariantCulture), new Box(
                    glyph.At.X + ink.Left * glyph.Scale, glyph.At.Y + ink.Top * glyph.Scale, glyph.At.X + ink.Right * glyph.Scale, glyph.At.Y + ink.Bottom * glyph.Scale))];
            case Text text:
                var width = fonts.Texts.WidthOf(text.Value, text.Face, text.Size);
                var left = text.At.X - text.Anchor switch { Anchor.Start => 0, Anchor.Middle => width / 2, _ => width };
                return [(path + " text " + text.Value, new Box(left, text.At.Y - fonts.Texts.DigitHeight(text.Face, text.Size), left + width, text.At.Y))];
            case Line line:
                var half = line.Thickness / 2;
                return [(path + " line", new Box(Math.Min(line.From.X, line.To.X) - half, Math.Min(line.From.Y, line.To.Y) - half,
                    Math.Max(line.From.X, line.To.X) + half, Math.Max(line.From.Y, line.To.Y) + half))];
            default:
                return [];
        }
    }
}
