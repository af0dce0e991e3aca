using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Performance;

namespace Fretlore.Sound.Mixing;

/// <summary>A short tone on every beat of the metre, higher on the first of a bar.</summary>
internal sealed class ClickTrack : ITrack
{
    private const double Level = 0.35;
    private const int Length = SampleRate.Hertz / 25;

    private readonly ImmutableArray<(long Sample, bool IsFirst)> clicks;
    private int next;

    private ClickTrack(ImmutableArray<(long Sample, bool IsFirst)> clicks) => this.clicks = clicks;

    public object Content => clicks.ToValueList();

    public static ClickTrack Of(PerformedSong song, Stretch stretch, bool countIn, bool through)
    {
        var clicks = ImmutableArray.CreateBuilder<(long, bool)>();
        if (countIn)
        {
            var first = song.Bars[stretch.First];
            var bar = song.Song.Bars[first.Bar];
            var quarter = Stretch.SecondsPerQuarter(song, first);
            var count = stretch.LeadIn / quarter;
            foreach (var (at, isFirst) in BeatsOf(bar.Meter)) clicks.Add((SampleRate.At(at.ToDouble() * quarter), isFirst));
            foreach (var (at, isFirst) in BeatsOf(bar.Meter))
            {
                var later = (bar.Meter.Length + at).ToDouble();
                if (later < count - 1e-9) clicks.Add((SampleRate.At(later * quarter), isFirst));
            }
        }
        for (var i = stretch.First; through && i <= stretch.Last; i++)
        {
            var bar = song.Song.Bars[song.Bars[i].Bar];
            var missing = bar.IsPickup ? bar.Meter.Length - bar.Length : Beats.Zero;
            foreach (var (at, isFirst) in BeatsOf(bar.Meter))
            {
                if (at < missing || at - missing >= bar.Length) continue;
                clicks.Add((stretch.SampleAt(song.Tempo.SecondsAt(song.Bars[i].Start + at - missing)), isFirst));
            }
        }
        if (stretch.IsLoop) return new ClickTrack([.. clicks.SelectMany(click => stretch.Rounds().Select(by => (click.Item1 + by, click.Item2))).Order()]);
        return new ClickTrack(clicks.ToImmutable());
    }

    public void Render(long from, Span<double> left, Span<double> right)
    {
        while (next < clicks.Length && clicks[next].Sample + Length <= from) next++;
        for (var i = next; i < clicks.Length && clicks[i].Sample < from + left.Length; i++)
        {
            var (sample, isFirst) = clicks[i];
            var turn = 2 * Math.PI * (isFirst ? 1760 : 1320) / SampleRate.Hertz;
            for (var at = Math.Max(0, sample - from); at < Math.Min(left.Length, sample + Length - from); at++)
            {
                var n = from + at - sample;
                var value = Level * Math.Sin(turn * n) * Math.Exp(-n / 240.0);
                left[(int)at] += value;
                right[(int)at] += value;
            }
        }
    }

    private static IEnumerable<(Beats At, bool IsFirst)> BeatsOf(Meter meter)
    {
        var at = Beats.Zero;
        foreach (var group in meter.Groups)
        {
            yield return (at, at == Beats.Zero);
            at += Beats.Of(4, meter.Unit) * group;
        }
    }
}
