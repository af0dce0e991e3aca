using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.RoadMaps.Proposing;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Takes;
using Fretlore.Score;

namespace Fretlore.Tests.RoadMaps;

/// <summary>A road map is found again in takes that were made from it. Some of the twenty maps; all where FRETLORE_SOAK is set.</summary>
public sealed class ProposalFacts(ITestOutputHelper output)
{
    [Fact]
    public void FromTenTakes_NineTenthsOfTheFixedBars_AndTheScale_AreFoundAgain()
    {
        var (had, found, wrong, scales, right) = (0, 0, 0, 0, 0);
        foreach (var map in Soak.Maps(VariedMaps.All, 3))
        {
            var (stretch, proposal) = Propose(map, 10);
            for (var bar = 0; bar < stretch.Count; bar++)
            {
                var (was, isNow) = (!stretch.Bars[bar].IsFree, !proposal.Stretch.Bars[bar].IsFree);
                had += was ? 1 : 0;
                found += was && isNow ? 1 : 0;
                wrong += !was && isNow ? 1 : 0;
            }
            var isRight = true;
            for (var bar = 1; bar <= stretch.Count; bar++) isRight &= stretch.Bars[bar - 1].ScaleTones is not { } tones || !stretch.Bars[bar - 1].IsFree || proposal.Stretch.Bars[bar - 1].ScaleTones == tones;
            if (stretch.Map.RulesOf<ScaleRule>().Any())
            {
                scales++;
                right += isRight ? 1 : 0;
            }
            output.WriteLine($"{map.Name}{(isRight ? "" : " (another scale)")}: {string.Join(" | ", proposal.Map.Rules)}");
        }
        output.WriteLine(FormattableString.Invariant($"{found} of {had} fixed bars found, {wrong} free ones taken for fixed; {right} of {scales} scales"));
        Assert.True(found >= 0.9 * had);
        Assert.Equal(0, wrong);
        Assert.True(right >= 0.9 * scales);
    }

    [Fact]
    public void TheTakes_KeepWhatIsProposed()
    {
        foreach (var map in Soak.Maps(VariedMaps.All, 3))
        {
            var (_, proposal) = Propose(map, 5);
            foreach (var outcome in proposal.Checks.SelectMany(c => c.Rules)) Assert.True(outcome.IsKept || outcome.Rule is ScaleRule, $"{map.Name}: {outcome.Rule}");
        }
    }

    [Fact]
    public void TheEnd_AndTheTargetReachedByABend_AreFoundAgain()
    {
        var (_, proposal) = Propose(VariedMaps.All[0], 10);
        Assert.Contains(proposal.Map.RulesOf<AimRule>(), a => a is { Target.PitchClass: 9, How: { Kind: ApproachKind.Bend, Semitones: 1 }, Beat: 3 } && a.Bars == StretchBars.Of(4, 4));
        var end = Assert.Single(proposal.Map.RulesOf<EndRule>());
        Assert.Equal("end D on string 3 by a slide from below, held", end.ToString());
        Assert.Contains(proposal.Map.RulesOf<LickRule>(), l => l.Riffs.Contains("talon"));
        Assert.Contains(proposal.Map.RulesOf<FixedRule>(), f => f.Riff == "dive");
    }

    private static (SoloStretch Stretch, Proposal Proposal) Propose(VariedMap map, int count)
    {
        var stretch = map.Stretch();
        var maker = new TakeMaker(stretch);
        ImmutableArray<ImmutableArray<PartBar>> takes = [.. Enumerable.Range(1, count).Select(n => maker.Make(11, n, (n - 1.0) / (count - 1))!.Bars)];
        var use = stretch.Use;
        var part = stretch.Part with { Bars = new ValueList<PartBar>([.. stretch.Part.Bars.Items[..use.FirstBar], .. takes[0], .. stretch.Part.Bars.Items[(use.FirstBar + use.BarCount)..]]) };
        var song = stretch.Song with { Parts = new ValueList<Part>(stretch.Song.Parts.Items.SetItem(use.Part, part)), RoadMaps = [], RoadMapUses = [], RiffUses = stretch.Song.RiffUses.Where(u => u.Part != use.Part).ToValueList() };
        return (stretch, MapProposer.Propose(song, SongReader.Read(stretch.Song), use with { RoadMap = "found" }, takes));
    }
}
