using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Exchange.Sheets;

/// <summary>A stretch of written bars that is played several times.</summary>
/// <param name="First">Its first bar.</param>
/// <param name="BodyEnd">The bar after its body.</param>
/// <param name="End">The bar after its last ending.</param>
/// <param name="Count">How often it is played; 2 or more.</param>
/// <param name="Endings">First bar, bar after the last, and passes of each ending.</param>
internal sealed record Repeat(int First, int BodyEnd, int End, int Count, ImmutableArray<(int First, int End, ValueList<int> Passes)> Endings)
{
    /// <summary>The repeats of written bars, as <see cref="PlayOrder"/> reads them.</summary>
    public static ImmutableArray<Repeat> In(ValueList<Bar> bars)
    {
        var repeats = ImmutableArray.CreateBuilder<Repeat>();
        for (var start = 0; start < bars.Count;)
        {
            var (end, count) = StretchFrom(bars, start);
            if (count > 1) repeats.Add(Of(bars, start, end, count));
            start = end;
        }
        return repeats.ToImmutable();
    }

    /// <summary>The bar that is played before a bar, the first time that comes: for an ending the end of the body, after a repeat the end of its last pass.</summary>
    /// <returns>-1 before the first bar.</returns>
    public static int Before(ImmutableArray<Repeat> repeats, int bar)
    {
        foreach (var repeat in repeats)
        {
            if (repeat.Endings.Any(e => e.First == bar)) return repeat.BodyEnd - 1;
            if (repeat.End != bar || repeat.Endings.IsEmpty) continue;
            var last = repeat.Endings.FirstOrDefault(e => e.Passes.Contains(repeat.Count), (repeat.First, repeat.BodyEnd, []));
            return last.End - 1;
        }
        return bar - 1;
    }

    private static Repeat Of(ValueList<Bar> bars, int start, int end, int count)
    {
        var body = start;
        while (body < end && bars[body].EndingPasses.Count == 0) body++;
        var endings = ImmutableArray.CreateBuilder<(int, int, ValueList<int>)>();
        for (var i = body; i < end;)
        {
            var next = i + 1;
            while (next < end && !bars[next].StartsEnding && bars[next].EndingPasses == bars[i].EndingPasses) next++;
            endings.Add((i, next, bars[i].EndingPasses));
            i = next;
        }
        return new Repeat(start, body, end, count, endings.ToImmutable());
    }

    private static (int End, int Count) StretchFrom(ValueList<Bar> bars, int start)
    {
        var count = 1;
        for (var bar = start; bar < bars.Count; bar++)
        {
            if (bar > start && bars[bar].StartsRepeat) return (bar, count);
            if (bar > start && count > 1 && bars[bar].EndingPasses.Count == 0) return (bar, count);
            if (bars[bar].RepeatCount <= 1) continue;
            count = bars[bar].RepeatCount;
            if (bars[bar].EndingPasses.Count == 0) return (bar + 1, count);
        }
        return (bars.Count, count);
    }
}
