using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.RoadMaps;

/// <summary>Draws what a player needs to know in the free bars of one part in one system.</summary>
internal sealed class RoadMapRow(ScoreModel model, StaffPlan staff, SystemGeometry geometry)
{
    private const double Size = HouseStyle.WordSize * 0.92;
    private const double LineHeight = Size * 1.25;
    private const double BesideWords = 1.5;

    /// <summary>Aims in their bars, and over them the licks and the rules where the stretch begins.</summary>
    public void DrawWords(Pen pen)
    {
        for (var i = 0; i < geometry.Measures.Length; i++)
        {
            var place = geometry.Measures[i];
            if (RoadMapStretch.At(model.Song, staff, place.Measure) is not { } stretch) continue;
            foreach (var aim in stretch.Map.RulesOf<AimRule>())
            {
                if (aim.Bars?.Contains(stretch.NumberOf(place.Measure), stretch.Use.BarCount) == true) DrawLines(pen, RoadMapWords.AimAt(aim), place.Music, RoomFor(stretch, i));
            }
        }
        for (var i = 0; i < geometry.Measures.Length; i++)
        {
            var place = geometry.Measures[i];
            if (RoadMapStretch.At(model.Song, staff, place.Measure) is not { } stretch) continue;
            if (!stretch.StartsIn(place.Measure) && i > 0) continue;
            var last = i;
            while (last + 1 < geometry.Measures.Length && RoadMapStretch.At(model.Song, staff, geometry.Measures[last + 1].Measure)?.Use == stretch.Use) last++;
            if (stretch.StartsIn(place.Measure)) LickRow.Draw(pen, stretch.Map, model.Song, place.Music, geometry.Left, geometry.Right);
            var words = stretch.StartsIn(place.Measure) ? RoadMapWords.Rules(stretch.Map) : RoadMapWords.GoesOn(stretch.Map);
            DrawLines(pen, words, place.Music, geometry.Measures[last].Right);
        }
    }

    /// <summary>The neck region, in the first bar of a stretch; where the hand is on its way along the neck, in the bars after it.</summary>
    public void DrawNecks(Pen pen)
    {
        foreach (var place in geometry.Measures)
        {
            if (RoadMapStretch.At(model.Song, staff, place.Measure) is not { } stretch) continue;
            RegionIn(stretch, staff, place.Measure)?.Draw(pen, staff.Part.Neck, place.Left + place.Prefix.Width, place.Right);
        }
    }

    /// <summary>The stretch of neck that a free bar shows, or null.</summary>
    public static NeckRegion? RegionIn(RoadMapStretch stretch, StaffPlan staff, Measure measure) => stretch.StartsIn(measure)
        ? NeckRegion.Of(stretch.Map, staff.Part.Neck)
        : NeckRegion.In(stretch.Map, staff.Part.Neck, stretch.NumberOf(measure), stretch.Use.BarCount);

    // An aim may reach over the bars after it that have none.
    private double RoomFor(RoadMapStretch stretch, int at)
    {
        var last = at;
        while (last + 1 < geometry.Measures.Length && geometry.Measures[last + 1].Measure is var next
            && RoadMapStretch.At(model.Song, staff, next)?.Use == stretch.Use && !stretch.Map.RulesOf<AimRule>().Any(a => a.Bars?.Contains(stretch.NumberOf(next), stretch.Use.BarCount) == true))
        {
            last++;
        }
        return geometry.Measures[last].Right - 0.4;
    }

    // Over bars that are short, words go on over the bars after them, or begin before them at the end of a system.
    private void DrawLines(Pen pen, string words, double left, double right)
    {
        var room = Math.Max(right - left - 1, Math.Min(HouseStyle.LeastTextWidth, geometry.Right - geometry.Left));
        var lines = LineWrap.Of(pen.Ink, words, Face.SerifItalic, Size, room);
        var width = lines.Max(l => MixedText.Width(pen.Ink, l, Size, Face.SerifItalic));
        left = Math.Max(geometry.Left, Math.Min(left, geometry.Right - width));
        // Not beside other words on one line, where they would read on.
        var above = pen.Skyline.Top(left - BesideWords, left + width + BesideWords);
        var y = Math.Min(-1, above - HouseStyle.SkylineGap - Size * 0.25) - (lines.Count - 1) * LineHeight;
        foreach (var line in lines)
        {
            MixedText.Draw(pen, line, left, y, Size, Face.SerifItalic);
            y += LineHeight;
        }
    }
}
