using System.Collections.Immutable;
using CsCheck;
using Fretlore.Lesson.Plans;

namespace Fretlore.Tests.Lesson.Plans;

public class StepOrderFacts
{
    private static readonly Gen<(int Difficulty, int Neck, ImmutableArray<int> Needs)[]> Steps =
        Gen.Select(Gen.Int[0, 4], Gen.Int[0, 2], Gen.Int[0, 8]).Array[0, 6].Select(steps =>
            steps.Select((s, i) => (s.Item1, s.Item2, s.Item3 < i ? ImmutableArray.Create(s.Item3) : [])).ToArray());

    [Fact]
    public void Order_CostsNoMoreThanAnyOther_AndPutsNeedsFirst() => Steps.Sample(steps =>
    {
        var order = StepOrder.Of(steps);
        Assert.Equal(Enumerable.Range(0, steps.Length), order.Order());
        Assert.True(IsSound(steps, order));
        var least = Permutations(steps.Length).Where(p => IsSound(steps, p)).Min(p => StepOrder.Cost(steps, p));
        Assert.Equal(least, StepOrder.Cost(steps, order));
    }, iter: 200);

    [Fact]
    public void MoreStepsThanAreSearched_StayInSongOrder_EachAfterWhatItNeeds()
    {
        var steps = Enumerable.Range(0, 30).Select(i => (4, 0, i == 3 ? ImmutableArray.Create(20) : [])).ToArray();
        var order = StepOrder.Of(steps);
        Assert.True(IsSound(steps, order));
        Assert.Equal([0, 1, 2, 20, 3, 4], order[..6]);
    }

    [Fact]
    public void EasyRiff_ComesBeforeAHardOne_ThoughTheSongHasItLater() => Assert.Equal([1, 0], StepOrder.Of([(4, 0, []), (1, 0, [])]));

    [Fact]
    public void Riffs_InOneTuning_AreTaughtTogether() => Assert.Equal([0, 2, 1], StepOrder.Of([(1, 0, []), (1, 1, []), (1, 0, [])]));

    private static bool IsSound((int Difficulty, int Neck, ImmutableArray<int> Needs)[] steps, IReadOnlyList<int> order)
    {
        var done = new HashSet<int>();
        foreach (var step in order)
        {
            if (!steps[step].Needs.All(done.Contains)) return false;
            done.Add(step);
        }
        return true;
    }

    private static IEnumerable<int[]> Permutations(int count)
    {
        if (count == 0) return [[]];
        return Permutations(count - 1).SelectMany(p => Enumerable.Range(0, count).Select(at => (int[])[.. p[..at], count - 1, .. p[at..]]));
    }
}
