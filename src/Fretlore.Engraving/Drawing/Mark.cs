using Fretlore.Music;

namespace Fretlore.Engraving.Drawing;

/// <summary>A place on a page: right of the left edge and below the top edge, in staff spaces.</summary>
public readonly record struct Point(double X, double Y)
{
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);
}

/// <summary>A rectangle on a page, in staff spaces.</summary>
public readonly record struct Box(double Left, double Top, double Right, double Bottom);

/// <summary>Something inked on a page. Lengths are in staff spaces; black unless it says otherwise.</summary>
public abstract record Mark;

/// <summary>A glyph of the music font.</summary>
/// <param name="CodePoint">Its SMuFL code point.</param>
/// <param name="At">Its origin: left end of its baseline.</param>
/// <param name="Scale">1 for the size whose em is four staff spaces.</param>
public sealed record Glyph(int CodePoint, Point At, double Scale = 1) : Mark;

/// <summary>How a line ends and breaks.</summary>
public enum LineStyle
{
    Solid,
    Dashed,
    Dotted,
}

/// <summary>A straight line of even thickness with square-cut ends.</summary>
public sealed record Line(Point From, Point To, double Thickness, LineStyle Style = LineStyle.Solid) : Mark;

/// <summary>A filled closed shape with straight sides: beams, arrow heads.</summary>
public sealed record Polygon(ValueList<Point> Points) : Mark;

/// <summary>An open cubic curve of even thickness: bend lines.</summary>
public sealed record Curve(Point From, Point Control1, Point Control2, Point To, double Thickness) : Mark;

/// <summary>A tie or slur: a cubic curve thin at its ends and thick in the middle.</summary>
public sealed record Slur(Point From, Point Control1, Point Control2, Point To, double EndThickness, double MiddleThickness) : Mark;

/// <summary>A white or tinted rectangle under what follows, such as behind a fret number on a string line.</summary>
/// <param name="Box">Where.</param>
/// <param name="Shade">0 is black, 1 is white.</param>
public sealed record Fill(Box Box, double Shade = 1) : Mark;

/// <summary>The faces of the text fonts.</summary>
public enum Face
{
    Serif,
    SerifItalic,
    SerifBold,
    Sans,
    SansBold,
}

/// <summary>Which point of a text its place is.</summary>
public enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>One line of text on its baseline.</summary>
/// <param name="Value">The text; not empty.</param>
/// <param name="At">A point on the baseline.</param>
/// <param name="Size">Em size in staff spaces.</param>
/// <param name="Face">Which font.</param>
/// <param name="Anchor">Whether <paramref name="At"/> is its start, middle or end.</param>
public sealed record Text(string Value, Point At, double Size, Face Face, Anchor Anchor = Anchor.Start) : Mark;

/// <summary>Marks that belong together, such as those of one bar, system or note; with neither id nor title, marks that are set down together.</summary>
/// <param name="Id">Stable and unique on all pages of a document; null where nothing refers to it.</param>
/// <param name="Title">What it is in words, for screen readers; null where its content speaks for itself.</param>
/// <param name="Marks">What it holds.</param>
/// <param name="Down">How far below their own places its marks are drawn: a row of a system is drawn once, before it is known where on the page it comes to stand.</param>
public sealed record Group(string? Id, string? Title, ValueList<Mark> Marks, double Down = 0) : Mark
{
    /// <summary>What it holds, each mark where it is drawn.</summary>
    public ValueList<Mark> InPlace => Down == 0 ? Marks : Marks.LoweredBy(Down);
}
