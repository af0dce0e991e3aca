using Fretlore.Engraving.Fonts;

namespace Fretlore.Engraving.Layout.Systems;

/// <summary>The sign for "the last bar again", in the bar, or for "the last two bars again", on the bar line between the two.</summary>
internal static class SameBarSign
{
    /// <returns>The glyph and its middle; glyph 0 in the second bar of a pair.</returns>
    public static (int Glyph, double X) At(MeasurePlace place, int count, int staff, SystemGeometry geometry)
    {
        var middle = (place.Left + place.Prefix.Width + place.Right) / 2;
        if (count == 1) return (Smufl.Repeat1Bar, middle);
        if (IsSecond(place, staff, geometry)) return (0, middle);
        return (Smufl.Repeat2Bars, geometry.Has(place.Measure.Index + 1) ? place.Right : middle);
    }

    // Pairs are counted from where the run of such bars begins.
    private static bool IsSecond(MeasurePlace place, int staff, SystemGeometry geometry)
    {
        var run = 0;
        for (var m = place.Measure.Index - 1; geometry.Has(m) && geometry[m].Measure.Parts[staff].Source.Repeats == 2; m--) run++;
        return run % 2 == 1;
    }
}
