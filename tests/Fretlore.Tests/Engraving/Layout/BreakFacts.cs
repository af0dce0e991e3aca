using CsCheck;
using Fretlore.Engraving.Layout.Breaking;
using Fretlore.Engraving.Layout.Spacing;
using Fretlore.Music;

namespace Fretlore.Tests.Engraving.Layout;

public class BreakFacts
{
    private static readonly Gen<BreakItem[]> Items =
        Gen.Select(Gen.Double[8, 45], Gen.Double[0.5, 0.95], Gen.Bool, (natural, share, section) =>
            new BreakItem(natural, natural * share, 8, 0, section)).Array[1, 10];

    [Fact]
    public void SystemBreaks_CostNoMoreThanAnyOthers() => Items.Sample(items =>
    {
        var found = Cost(items, SystemBreaker.Break(items, 90, 100).AsSpan().ToArray());
        var best = double.PositiveInfinity;
        for (var mask = 0; mask < 1 << (items.Length - 1); mask++)
        {
            var starts = new List<int> { 0 };
            for (var i = 1; i < items.Length; i++)
            {
                if ((mask >> (i - 1) & 1) == 1) starts.Add(i);
            }
            best = Math.Min(best, Cost(items, [.. starts]));
        }
        Assert.Equal(best, found, 9);
    });

    [Fact]
    public void Springs_FillTheWidthExactly_AndNeverGoBelowTheirInk() =>
        Gen.Select(Gen.Double[0.5, 8], Gen.Double[0.2, 4]).Array[1, 40].SelectMany(s => Gen.Double[1, 3].Select(f => (Springs: s, Factor: f))).Sample(t =>
        {
            var natural = t.Springs.Select(s => s.Item1).ToArray();
            var least = t.Springs.Select(s => s.Item2).ToArray();
            var width = least.Sum() * t.Factor;
            var lengths = Springs.Fill(natural, least, width);
            Assert.Equal(width, lengths.Sum(), 6);
            for (var i = 0; i < lengths.Length; i++) Assert.True(lengths[i] >= least[i] - 1e-9);
        });

    [Fact]
    public void LongerNotes_TakeMoreSpace_AboutFourTenthsMoreForADoubling()
    {
        for (var length = Beats.Of(1, 16); length < Beats.Whole; length *= 2)
        {
            Assert.Equal(Math.Sqrt(2), SpacingPass.NaturalSpace(length * 2) / SpacingPass.NaturalSpace(length), 9);
        }
    }

    [Fact]
    public void LastSystem_IsNotASingleBar_WhenAnotherBreakIsNearlyAsGood()
    {
        var items = Enumerable.Repeat(new BreakItem(24, 15, 8, 0), 9).ToArray();
        var starts = SystemBreaker.Break(items, 108, 108);
        Assert.True(items.Length - starts[^1] > 1);
    }

    [Fact]
    public void PageBreaks_KeepSystemsOnThePage_AndRefuseOneThatIsTooHigh()
    {
        double[] heights = [30, 30, 30, 30, 30];
        var starts = PageBreaker.Break(heights, 80, 100);
        Assert.NotNull(starts);
        Assert.Equal(0, starts.Value[0]);
        for (var p = 0; p < starts.Value.Length; p++)
        {
            var end = p + 1 < starts.Value.Length ? starts.Value[p + 1] : heights.Length;
            Assert.True(heights[starts.Value[p]..end].Sum() <= (p == 0 ? 80 : 100));
        }
        Assert.Null(PageBreaker.Break([120], 80, 100));
    }

    [Fact]
    public void Page_IsTurnedAtARest_WhereThatCostsLittle()
    {
        var heights = Enumerable.Repeat(10.0, 10).ToArray();
        Assert.Equal(7, PageBreaker.Break(heights, 96, 96)!.Value[1]);
        bool[] quiet = [false, false, true, false, false, true, false, false, false, false];
        Assert.Equal(6, PageBreaker.Break(heights, 96, 96, quiet)!.Value[1]);
    }

    [Fact]
    public void PageOfTwoTallSystems_IsFilled_BetweenTheirPartsToo()
    {
        var (gap, wider) = PageBreaker.WhiteOf([50, 50], 2, 121, isLast: false);
        Assert.Equal(121, 50 + 50 + gap + 2 * wider, 6);
        Assert.True(wider < gap);
    }

    [Fact]
    public void PageWithRoomForAnotherSystem_LeavesItAtItsFoot()
    {
        var (gap, wider) = PageBreaker.WhiteOf([45, 45], 2, 160, isLast: false);
        Assert.True(gap <= 15, "Systems further apart than this read as two pieces.");
        Assert.True(wider < 4);
    }

    [Fact]
    public void Airiness_IsZeroForFullPages_AndCountsNoLastPage()
    {
        Assert.Equal(0, PageBreaker.AirinessOf([50, 50, 10], [0, 2], 100, 100), 6);
        Assert.Equal(0, PageBreaker.AirinessOf([10], [0], 100, 100), 6);
        Assert.Equal(0.25, PageBreaker.AirinessOf([50, 50], [0, 1], 100, 100), 6);
    }

    private static double Cost(BreakItem[] items, int[] starts)
    {
        var total = 0.0;
        for (var s = 0; s < starts.Length; s++)
        {
            total += SystemBreaker.Cost(items, starts[s], s + 1 < starts.Length ? starts[s + 1] : items.Length, s == 0 ? 90 : 100, out _);
        }
        return total;
    }
}
