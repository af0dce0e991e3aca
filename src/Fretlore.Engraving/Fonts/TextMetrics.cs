using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts.Shaping;

namespace Fretlore.Engraving.Fonts;

/// <summary>Measures of the text faces, taken from the fonts themselves.</summary>
internal sealed class TextMetrics(TextShaper shaper, Func<Face, FontSource> faces) : ITextMetrics
{
    private readonly Lazy<FaceMeasures>[] measures = [.. Enum.GetValues<Face>().Select(face => new Lazy<FaceMeasures>(() => faces(face).Measure()))];

    public double WidthOf(string text, Face face, double size) => shaper.Shape(text, face).Width * size;

    public double CapHeight(Face face, double size) => Of(face).CapHeight * size;

    public double DigitHeight(Face face, double size) => Of(face).DigitHeight * size;

    public double Ascent(Face face, double size) => Of(face).Ascent * size;

    public double Descent(Face face, double size) => Of(face).Descent * size;

    private FaceMeasures Of(Face face) => measures[(int)face].Value;
}
