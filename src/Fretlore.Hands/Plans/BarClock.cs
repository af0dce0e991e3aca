using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Hands.Plans;

/// <summary>Seconds within a bar.</summary>
public sealed class BarClock
{
    // About a 16th at a middling tempo.
    private const double LongestGrace = 0.1;

    private readonly List<(Beats At, double Seconds, Tempo Tempo)> marks = [];

    /// <param name="bar">The bar.</param>
    /// <param name="before">The tempo in force before it.</param>
    /// <param name="start">When it begins, in seconds.</param>
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

    /// <summary>The tempo at its end.</summary>
    public Tempo LastTempo => marks[^1].Tempo;

    /// <summary>When a place in the bar comes, in seconds.</summary>
    /// <param name="at">Quarter notes from its start.</param>
    public double Seconds(Beats at)
    {
        var i = marks.Count - 1;
        while (i > 0 && marks[i].At > at) i--;
        return marks[i].Seconds + (at - marks[i].At).ToDouble() * marks[i].Tempo.SecondsPerQuarter;
    }

    /// <summary>Seconds each of some grace notes takes: they take their time from the note before, and leave it some.</summary>
    /// <param name="before">When the note before begins, in seconds.</param>
    /// <param name="start">When the note they lead to begins.</param>
    /// <param name="count">How many they are.</param>
    public static double GraceSeconds(double before, double start, int count) => Math.Min(LongestGrace, (start - before) / (count + 1));
}
