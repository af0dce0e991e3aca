using System.Collections.Immutable;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>The order in which written bars are played.</summary>
public static class PlayOrder
{
    /// <summary>Unrolls repeats, endings and jumps. Repeats do not nest.</summary>
    /// <param name="bars">Written bars; each repeat starts at a bar that says so or at the song's start.</param>
    /// <remarks>
    /// One jump back is made, at the last time through its bar; after it repeats are played once, with their last ending (common practice). A jump
    /// that has nowhere to go is passed over.
    /// </remarks>
    public static ImmutableArray<PlayedBar> Of(ValueList<Bar> bars)
    {
        var played = ImmutableArray.CreateBuilder<PlayedBar>();
        var time = Beats.Zero;
        Jump? made = null;
        for (var start = 0; start < bars.Count;)
        {
            var (end, count) = RepeatFrom(bars, start);
            int? next = null;
            for (var pass = made is null ? 1 : count; pass <= count && next is null; pass++)
            {
                for (var bar = start; bar < end && next is null; bar++)
                {
                    var passes = bars[bar].EndingPasses;
                    if (passes.Count > 0 && !passes.Contains(pass)) continue;
                    played.Add(new PlayedBar(bar, pass, time));
                    time += bars[bar].Length;
                    if (bars[bar].Jump == Jump.None || pass != LastPassOf(bars[bar], count)) continue;
                    next = GoalOf(bars, bar, made);
                    if (next is not null && made is null) made = bars[bar].Jump;
                }
            }
            start = next ?? end;
        }
        return played.ToImmutable();
    }

    /// <summary>Where in the order played a bar comes, each time it is played.</summary>
    /// <param name="bars">Written bars.</param>
    /// <param name="played">Their order, as <see cref="Of"/> gives it.</param>
    /// <param name="number">The bar's printed number; 0 is the pickup at the song's start, and no later pickup is found.</param>
    /// <returns>Indexes into <paramref name="played"/>; none where the song has no such bar.</returns>
    public static ImmutableArray<int> PlacesOf(ValueList<Bar> bars, IReadOnlyList<PlayedBar> played, int number) =>
        [.. Enumerable.Range(0, played.Count).Where(i => bars[played[i].Bar] is var bar && bar.Number == number && (number == 0 || !bar.IsPickup))];

    // Where a bar's jump leads; null to go on. What leads to Fine and coda counts only after the jump back.
    private static int? GoalOf(ValueList<Bar> bars, int bar, Jump? made) => (bars[bar].Jump, made) switch
    {
        (Jump.Fine, { } back) when !back.EndsAtCoda() => bars.Count,
        (Jump.ToCoda, { } back) when back.EndsAtCoda() => IndexAfter(bars, bar, b => b.IsCoda),
        (var jump, null) when jump.IsDaCapo() => 0,
        (var jump, null) when jump.IsDalSegno() => IndexUpTo(bars, bar, b => b.IsSegno),
        _ => null,
    };

    private static int? IndexAfter(ValueList<Bar> bars, int bar, Func<Bar, bool> isGoal)
    {
        for (var i = bar + 1; i < bars.Count; i++)
        {
            if (isGoal(bars[i])) return i;
        }
        return null;
    }

    private static int? IndexUpTo(ValueList<Bar> bars, int bar, Func<Bar, bool> isGoal)
    {
        for (var i = bar; i >= 0; i--)
        {
            if (isGoal(bars[i])) return i;
        }
        return null;
    }

    private static int LastPassOf(Bar bar, int count) => bar.EndingPasses.Count > 0 ? Math.Min(count, bar.EndingPasses.Items.Max()) : count;

    // A stretch runs up to the next repeat's start, or through the last ending of the repeat that begins here.
    private static (int End, int Count) RepeatFrom(ValueList<Bar> bars, int start)
    {
        var count = 1;
        for (var bar = start; bar < bars.Count; bar++)
        {
            if (bar > start && bars[bar].StartsRepeat) return (bar, count);
            if (bar > start && count > 1 && bars[bar].EndingPasses.Count == 0) return (bar, count);
            if (bars[bar].RepeatCount > 1)
            {
                count = bars[bar].RepeatCount;
                if (bars[bar].EndingPasses.Count == 0) return (bar + 1, count);
            }
        }
        return (bars.Count, count);
    }
}
