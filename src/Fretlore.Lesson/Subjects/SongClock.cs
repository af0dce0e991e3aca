using System.Collections.Immutable;
using Fretlore.Performance;

namespace Fretlore.Lesson.Subjects;

/// <summary>How often and how long the song plays a stretch of written bars.</summary>
internal sealed class SongClock
{
    private readonly ImmutableArray<double> secondsOfBar;
    private readonly ImmutableArray<int> passesOfBar;

    public SongClock(PerformedSong played)
    {
        var seconds = new double[played.Song.Bars.Count];
        var passes = new int[seconds.Length];
        for (var i = 0; i < played.Bars.Length; i++)
        {
            var end = i + 1 < played.Bars.Length ? played.Bars[i + 1].StartSeconds : played.Seconds;
            seconds[played.Bars[i].Bar] += end - played.Bars[i].StartSeconds;
            passes[played.Bars[i].Bar]++;
        }
        (secondsOfBar, passesOfBar) = ([.. seconds], [.. passes]);
        Seconds = played.Seconds;
    }

    /// <summary>The whole song.</summary>
    public double Seconds { get; }

    /// <summary>Seconds in which at least one of the places sounds, repeats included.</summary>
    public double SecondsOf(IEnumerable<Place> places) =>
        places.SelectMany(place => Enumerable.Range(place.FirstBar, place.BarCount)).Distinct().Sum(bar => secondsOfBar[bar]);

    /// <summary>How often it comes: parts that play it at once count once.</summary>
    public int TimesOf(IEnumerable<Place> places) => places.Select(place => place.FirstBar).Distinct().Sum(bar => passesOfBar[bar]);
}
