using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Lettering;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Engraving.Layout.Systems;

namespace Fretlore.Engraving.Layout.RoadMaps;

/// <summary>Draws what a player needs to know in the free bars of one part in one system.</summary>
internal sealed class RoadMapRow(ScoreModel model, StaffPlan staff, SystemGeometry geometry)
{
    private const double Size = HouseStyle.WordSize * 0.92;
    private const double LineHeight = Size * 1.25;

    /// <summary>Aims in their bars, and over them the rules where the stretch begins.</summary>
    public void DrawWords(Pen pen)
    {
        for (var i = 0; i < geometry.Measures.Length; i++)
        {
            var place = geometry.Measures[i];
            if (RoadMapStretch.At(model.Song, staff, place.Measure) is not { } stretch) continue;
            foreach (var aim in stretch.Map.Aims)
            {
                if (aim.Bar == stretch.NumberOf(place.Measure)) DrawLines(pen, RoadMapWords.AimAt(aim), place.Music, RoomFor(stretch, i), 1);
            }
        }
        for (var i = 0; i < geometry.Measures.Length; i++)
        {
            var place = geometry.Measures[i];
            if (RoadMapStretch.At(model.Song, staff, place.Measure) is not { } stretch) continue;
            if (!stretch.StartsIn(place.Measure) && i > 0) continue;
            var last = i;
            while (last + 1 < geometry.Measures.Length && RoadMapStretch.At(model.Song, staff, geometry.Measures[last + 1].Measure)?.Use == stretch.Use) last++;
            var words = stretch.StartsIn(place.Measure) ? RoadMapWords.Rules(stretch.Map) : RoadMapWords.GoesOn(stretch.Map);
            DrawLines(pen, words, place.Music, geometry.Measures[last].Right, 1);
        }
    }

    /// <summary>The neck region, in the first bar of a stretch.</summary>
    public void DrawNecks(Pen pen)
    {
        foreach (var place in geometry.Measures)
        {
            if (RoadMapStretch.At(model.Song, staff, place.Measure) is not { } stretch || !stretch.StartsIn(place.Measure)) continue;
            NeckRegion.Of(stretch.Map, staff.Part.Neck)?.Draw(pen, staff.Part.Neck, place.Left + place.Prefix.Width, place.Right);
        }
    }

    // An aim may reach over the bars after it that have none.
    private double RoomFor(RoadMapStretch stretch, int at)
    {
        var last = at;
        while (last + 1 < geometry.Measures.Length && geometry.Measures[last + 1].Measure is var next
            && RoadMapStretch.At(model.Song, staff, next)?.Use == stretch.Use && !stretch.Map.Aims.Items.Any(a => a.Bar == stretch.NumberOf(next)))
        {
            last++;
        }
        return geometry.Measures[last].Right - 0.4;
    }

    private static void DrawLines(Pen pen, string words, double left, double right, double start)
    {
        var lines = LineWrap.Of(pen.Ink, words, Face.SerifItalic, Size, Math.Max(12, right - left - 1));
        var width = lines.Max(l => MixedText.Width(pen.Ink, l, Size, Face.SerifItalic));
        var y = Math.Min(-start, pen.Skyline.Top(left, left + width) - HouseStyle.SkylineGap - Size * 0.25) - (lines.Count - 1) * LineHeight;
        foreach (var line in lines)
        {
            MixedText.Draw(pen, line, left, y, Size, Face.SerifItalic);
            y += LineHeight;
        }
    }
}
