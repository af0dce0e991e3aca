namespace Fretlore.Engraving.Drawing;

/// <summary>What layout needs to know of the music font, in staff spaces; y grows downwards, as on the page.</summary>
public interface IMusicFont
{
    /// <summary>The ink of a glyph around its origin.</summary>
    Box InkOf(int codePoint);

    double AdvanceOf(int codePoint);

    /// <summary>An anchor of a glyph such as <c>stemUpSE</c>; null when the font has none.</summary>
    Point? AnchorOf(int codePoint, string anchor);

    /// <summary>A SMuFL engraving default such as <c>staffLineThickness</c>.</summary>
    double Default(string name);
}

/// <summary>What layout needs to know of the text fonts.</summary>
public interface ITextMetrics
{
    /// <summary>The advance width of a text, in the unit of <paramref name="size"/>.</summary>
    double WidthOf(string text, Face face, double size);

    /// <summary>Height of capitals above the baseline.</summary>
    double CapHeight(Face face, double size);

    /// <summary>Height of digits above the baseline.</summary>
    double DigitHeight(Face face, double size);

    double Ascent(Face face, double size);

    /// <summary>Depth below the baseline, positive.</summary>
    double Descent(Face face, double size);
}
