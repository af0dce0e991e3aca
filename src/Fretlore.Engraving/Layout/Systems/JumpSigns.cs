using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Draws segno and coda over the bar lines they stand at, and over the end of a bar where it is gone to from there.</summary>
internal sealed class JumpSigns(Pen pen, SystemGeometry geometry)
{
    private const double Scale = 0.75;
    private const double Size = HouseStyle.WordSize;
    private const double Gap = 0.4;

    public void Draw()
    {
        var rows = new StackedRows(pen);
        foreach (var place in geometry.Measures)
        {
            var x = place == geometry.Measures[0] ? place.Left + place.Prefix.Width : place.Left;
            if (place.Measure.Bar.IsSegno) x = AddSign(rows, Smufl.Segno, x);
            if (place.Measure.Bar.IsCoda) AddSign(rows, Smufl.Coda, x);
            if (WordsOf(place.Measure.LastBar.Jump) is { Length: > 0 } words) AddWords(rows, words, place.Measure.LastBar.Jump == Jump.ToCoda, place.Right);
        }
        rows.DrawAbove(0.3, 1);
    }

    /// <summary>A jump as it is printed.</summary>
    public static string WordsOf(Jump jump) => jump switch
    {
        Jump.Fine => "Fine",
        Jump.ToCoda => "To Coda",
        Jump.DaCapo => "D.C.",
        Jump.DaCapoAlFine => "D.C. al Fine",
        Jump.DaCapoAlCoda => "D.C. al Coda",
        Jump.DalSegno => "D.S.",
        Jump.DalSegnoAlFine => "D.S. al Fine",
        Jump.DalSegnoAlCoda => "D.S. al Coda",
        _ => "",
    };

    // Its middle over the bar line.
    private double AddSign(StackedRows rows, int glyph, double x)
    {
        var ink = pen.Ink.Glyph(glyph);
        var half = (ink.Right - ink.Left) / 2 * Scale;
        var middle = Math.Max(geometry.Left + half, x);
        rows.Add(middle - half, middle + half, y => pen.GlyphCentred(glyph, middle, y - ink.Bottom * Scale, Scale));
        return middle + half * 2 + Gap;
    }

    // Ends at the bar's end.
    private void AddWords(StackedRows rows, string words, bool withSign, double right)
    {
        var sign = pen.Ink.Glyph(Smufl.Coda);
        const double Small = Scale * 0.75;
        var signWidth = withSign ? (sign.Right - sign.Left) * Small + Gap : 0;
        var width = pen.Ink.TextWidth(words, Face.SerifBold, Size);
        var left = Math.Max(geometry.Left, right - width - signWidth);
        rows.Add(left, left + width + signWidth, y =>
        {
            pen.Text(words, left, y, Size, Face.SerifBold);
            if (withSign) pen.Glyph(Smufl.Coda, left + width + Gap - sign.Left * Small, y - sign.Bottom * Small + 0.1, Small);
        });
    }
}
