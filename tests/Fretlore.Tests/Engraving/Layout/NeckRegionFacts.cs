using Fretlore.Engraving.Layout.RoadMaps;
using Fretlore.Guitar;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Tests.Engraving.Layout;

/// <summary>The stretch of neck that is drawn in free bars.</summary>
public sealed class NeckRegionFacts
{
    private static readonly ScaleRule Scale = new(new NoteName(Step.D, 0), "minor pentatonic");

    [Fact]
    public void WhereTheHandMoves_EachBarShowsItsFiveFrets()
    {
        var map = Map(new FretsRule(new Fret(15), new Fret(5), true));
        var whole = NeckRegion.Of(map, new Neck(Tuning.Standard))!;
        var bar = NeckRegion.In(map, new Neck(Tuning.Standard), 4, 8)!;
        Assert.True(bar.LeastWidth < whole.LeastWidth);
        Assert.Equal(NeckRegion.Of(Map(new FretsRule(new Fret(5), new Fret(9), false)), new Neck(Tuning.Standard))!.LeastWidth, bar.LeastWidth, 6);
    }

    [Fact]
    public void WhereTheHandStandsStill_OnlyTheFirstFreeBarShowsIt() =>
        Assert.Null(NeckRegion.In(Map(new FretsRule(new Fret(5), new Fret(9), false)), new Neck(Tuning.Standard), 4, 8));

    private static RoadMap Map(FretsRule frets) => new() { Name = "way", Rules = [Scale, frets] };
}
