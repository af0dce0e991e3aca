using System.Collections.Immutable;
using CsCheck;
using Fretlore.Lesson.Plans;

namespace Fretlore.Tests.Lesson.Plans;

public class LengthChoiceFacts
{
    private static readonly Gen<ChoiceStep> Step = Gen.Select(
        Gen.Select(Gen.Int[1, 60], Gen.Int[1, 40], (t, w) => new StepOption(t, w)).Array[1, 3], Gen.Int[0, 9], Gen.Int[-1, 6].Array[0, 2], Gen.Int[-1, 2],
        (options, kept, needs, neck) => new ChoiceStep([.. options], kept == 0, [.. needs.Where(n => n >= 0)], neck));

    private static readonly Gen<ImmutableArray<ChoiceStep>> Steps = Step.Array[0, 6].Select(steps =>
        steps.Select((s, i) => s with { Needs = [.. s.Needs.Where(n => n < steps.Length && n != i)] }).ToImmutableArray());

    [Fact]
    public void Choice_IsWorthAsMuchAsTheBestOfAllThereAre_AndNeverOverTime() =>
        Gen.Select(Steps, Gen.Int[0, 200]).Sample((steps, most) =>
    {
        var chosen = new LengthChoice(steps, Changeover).Within(most);
        var best = All(steps).Where(c => c.Tenths <= most).OrderByDescending(c => c.Worth).ThenBy(c => c.Tenths).FirstOrDefault();
        if (best is null)
        {
            Assert.Null(chosen);
            return;
        }
        Assert.NotNull(chosen);
        Assert.Equal((best.Worth, best.Tenths), (chosen.Worth, chosen.Tenths));
        Assert.Equal((chosen.Worth, chosen.Tenths), Sum(steps, chosen.Options));
        Assert.True(chosen.Tenths <= most);
    }, iter: 2000);

    [Fact]
    public void WhatMoreTimeAdds_IsTheBestOfAllThatTakeNothingAway() => Gen.Select(Steps, Gen.Int[0, 200], Gen.Int[0, 60]).Sample((steps, most, more) =>
    {
        var choice = new LengthChoice(steps, Changeover);
        if (choice.Within(most) is not { } now) return;
        var then = choice.Within(most + more, now.Options);
        var best = All(steps).Where(c => c.Tenths <= most + more && c.Options.Zip(now.Options).All(o => o.First >= o.Second)).OrderByDescending(c => c.Worth).ThenBy(c => c.Tenths).First();
        Assert.NotNull(then);
        Assert.Equal((best.Worth, best.Tenths), (then.Worth, then.Tenths));
        Assert.Equal((then.Worth, then.Tenths), Sum(steps, then.Options));
    }, iter: 2000);

    [Fact]
    public void Shortest_IsTheShortestOfAllThereAre() => Steps.Sample(steps =>
        Assert.Equal(All(steps).Min(c => c.Tenths), new LengthChoice(steps, Changeover).Shortest().Tenths), iter: 1000);

    [Fact]
    public void Time_ThatHoldsTwoOfThreeSteps_IsNotSpentOnTheOneWorthMost()
    {
        // Greedy by worth would take the first, worth 10, and have no room for the two others, worth 14 together.
        ImmutableArray<ChoiceStep> steps = [Of(60, 10), Of(50, 7), Of(50, 7)];
        Assert.Equal([-1, 0, 0], new LengthChoice(steps, (_, _) => 0).Within(100)!.Options);
    }

    [Fact]
    public void Step_IsNotChosenWithoutTheOneItNeeds()
    {
        ImmutableArray<ChoiceStep> steps = [Of(60, 1), Of(50, 100) with { Needs = [0] }];
        Assert.Equal([0, -1], new LengthChoice(steps, (_, _) => 0).Within(100)!.Options);
        Assert.Equal([0, 0], new LengthChoice(steps, (_, _) => 0).Within(110)!.Options);
    }

    [Fact]
    public void KeptSteps_ThatDoNotFit_LeaveNoChoice() => Assert.Null(new LengthChoice([Of(60, 1) with { IsKept = true }], (_, _) => 0).Within(59));

    [Fact]
    public void SixtyStepsInAnHour_AreChosenExactlyToo()
    {
        // Steps of one worth and three lengths each: the sum of the best must fill the hour to the tenth when all times divide it.
        var steps = Enumerable.Range(0, 60).Select(i => new ChoiceStep([new StepOption(100, 10), new StepOption(300, 30), new StepOption(600, 60)], false, i > 0 ? [i - 1] : [], 0)).ToImmutableArray();
        var chosen = new LengthChoice(steps, (_, _) => 0).Within(36_000)!;
        Assert.Equal((36_000, 3600), (chosen.Tenths, chosen.Worth));
    }

    private static ChoiceStep Of(int tenths, int worth) => new([new StepOption(tenths, worth)], false, [], 0);

    private static int Changeover(int from, int to) => from < 0 ? 3 : 5 + from + to;

    private static IEnumerable<Chosen> All(ImmutableArray<ChoiceStep> steps)
    {
        var options = Enumerable.Repeat(-1, steps.Length).ToArray();
        while (true)
        {
            if (IsSound(steps, options))
            {
                var (worth, tenths) = Sum(steps, [.. options]);
                yield return new Chosen([.. options], tenths, worth);
            }
            var at = 0;
            while (at < options.Length && ++options[at] == steps[at].Options.Length) options[at++] = -1;
            if (at == options.Length) yield break;
        }
    }

    private static bool IsSound(ImmutableArray<ChoiceStep> steps, int[] options) =>
        Enumerable.Range(0, steps.Length).All(i => options[i] < 0 ? !steps[i].IsKept : steps[i].Needs.All(n => options[n] >= 0));

    private static (int Worth, int Tenths) Sum(ImmutableArray<ChoiceStep> steps, ImmutableArray<int> options)
    {
        var (worth, tenths, neck) = (0, 0, -1);
        for (var i = 0; i < steps.Length; i++)
        {
            if (options[i] < 0) continue;
            worth += steps[i].Options[options[i]].Worth;
            tenths += steps[i].Options[options[i]].Tenths;
            if (steps[i].Neck < 0 || steps[i].Neck == neck) continue;
            tenths += Changeover(neck, steps[i].Neck);
            neck = steps[i].Neck;
        }
        return (worth, tenths);
    }
}
