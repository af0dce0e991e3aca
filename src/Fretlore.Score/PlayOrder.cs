using System.Collections.Immutable;
using Fretlore.Music;

namespace Fretlore.Score;

/// <summary>The order in which written bars are played.</summary>
public static class PlayOrder
{
    /// <summary>Unrolls repeats and endings. Repeats do not nest.</summary>
    /// <param name="bars">Written bars; each repeat starts at a bar that says so or at the song's start.</param>
    public static ImmutableArray<PlayedBar> Of(ValueList<Bar> bars)
    {
        var played = ImmutableArray.CreateBuilder<PlayedBar>();
        var time = Beats.Zero;
        var start = 0;
        while (start < bars.Count)
        {
            var (end, count) = RepeatFrom(bars, start);
            for (var pass = 1; pass <= count; pass++)
            {
                for (var bar = start; bar < end; bar++)
                {
                    var passes = bars[bar].EndingPasses;
                    if (passes.Count > 0 && !passes.Contains(pass)) continue;
                    played.Add(new PlayedBar(bar, pass, time));
                    time += bars[bar].Length;
                }
            }
            start = end;
        }
        return played.ToImmutable();
    }

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
