using System.Text;

namespace Fretlore.Engraving.Fonts.Shaping;

/// <summary>A line of text as glyphs in the order they stand on the line, in ems.</summary>
/// <param name="Runs">From left to right.</param>
/// <param name="Width">The advance of the whole line.</param>
/// <param name="Missing">Characters that no font at hand has; each stands as a box.</param>
internal sealed record ShapedText(GlyphRun[] Runs, double Width, Rune[] Missing);

/// <summary>Glyphs of one font that follow each other.</summary>
/// <param name="Source">The font.</param>
/// <param name="Left">Where the run begins on the line, in ems.</param>
/// <param name="Glyphs">Glyph numbers in that font.</param>
/// <param name="Places">For each glyph, where its origin lies from the line's start, in ems, y downwards.</param>
/// <param name="Text">What the run says.</param>
/// <param name="IsAccidentals">Whether it is accidentals of a text, for which the music font stands in.</param>
internal sealed record GlyphRun(FontSource Source, double Left, ushort[] Glyphs, Place[] Places, string Text, bool IsAccidentals = false);

/// <summary>An origin on the line, in ems.</summary>
internal readonly record struct Place(double X, double Y);
