using Fretlore.Engraving.Layout.Model;
using Fretlore.Score;

namespace Fretlore.Engraving.Layout.RoadMaps;

/// <summary>A free stretch of a part: the road map it is played by and where it stands.</summary>
/// <param name="Map">The road map.</param>
/// <param name="Use">Where it stands in the song.</param>
/// <param name="FirstFree">The first of its bars that is not a fixed phrase; index into the song's bars.</param>
internal sealed record RoadMapStretch(RoadMap Map, RoadMapUse Use, int FirstFree)
{
    /// <summary>The stretch a measure of a part belongs to; null when the part's notes are written out there.</summary>
    public static RoadMapStretch? At(Song song, StaffPlan staff, Measure measure)
    {
        if (measure.Parts[staff.Index] is not { IsFree: true, Source.RoadMap: { } name }) return null;
        foreach (var use in song.RoadMapUses)
        {
            if (use.Part != staff.PartIndex || use.RoadMap != name || measure.FirstBar < use.FirstBar || measure.FirstBar >= use.FirstBar + use.BarCount) continue;
            foreach (var map in song.RoadMaps)
            {
                if (map.Name == name) return new RoadMapStretch(map, use, FirstFreeOf(staff, use));
            }
        }
        return null;
    }

    /// <summary>True for the first free bar.</summary>
    public bool StartsIn(Measure measure) => measure.FirstBar == FirstFree;

    private static int FirstFreeOf(StaffPlan staff, RoadMapUse use)
    {
        var bar = use.FirstBar;
        while (bar + 1 < use.FirstBar + use.BarCount && !staff.Part.Bars[bar].IsRest) bar++;
        return bar;
    }

    /// <summary>The number of a measure within the stretch, from 1.</summary>
    public int NumberOf(Measure measure) => measure.FirstBar - Use.FirstBar + 1;
}
