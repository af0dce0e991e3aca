using Fretlore.Engraving.Fonts;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>Down- and upstrokes above a row; one for voices that are struck together.</summary>
internal sealed class StrokeSigns(Pen pen)
{
    private const double Scale = 0.8;
    private const double Half = 0.6;

    // Over the letters of hammered and pulled notes, not among them.
    private const double Clear = 0.8;

    private readonly StackedRows rows = new(pen);
    private readonly HashSet<(Stroke Stroke, double X)> struck = [];

    public void Add(Stroke stroke, double x)
    {
        if (stroke != Stroke.None && struck.Add((stroke, x))) Add(stroke == Stroke.Down ? Smufl.StringsDownBow : Smufl.StringsUpBow, x);
    }

    /// <param name="start">The least distance above the row's origin.</param>
    public void Draw(double start) => rows.DrawAbove(0, start, Clear);

    private void Add(int glyph, double x) => rows.Add(x - Half, x + Half, y => pen.GlyphCentred(glyph, x, y, Scale));
}
