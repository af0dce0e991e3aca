using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Plans;

/// <summary>Seconds within a bar.</summary>
internal sealed class BarClock
{
    private readonly List<(Beats At, double Seconds, Tempo Tempo)> marks = [];

    public BarClock(Bar bar, Tempo before, double start)
    {
        marks.Add((Beats.Zero, start, before));
        foreach (var mark in bar.Tempos)
        {
            var at = Seconds(mark.At);
            if (mark.At.IsZero) marks.Clear();
            marks.Add((mark.At, at, mark.Tempo));
        }
    }

    public Tempo LastTempo => marks[^1].Tempo;

    public double Seconds(Beats at)
    {
        var i = marks.Count - 1;
        while (i > 0 && marks[i].At > at) i--;
        return marks[i].Seconds + (at - marks[i].At).ToDouble() * marks[i].Tempo.SecondsPerQuarter;
    }
}
