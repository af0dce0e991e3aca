using Fretlore.Lesson.Film;
using Fretlore.Lesson.Plans;
using Fretlore.Music;

namespace Fretlore.Lesson.Captions;

/// <summary>Times the captions of a film: as planned, or to the chapters of the final recording.</summary>
public static class CaptionMaker
{
    /// <summary>Milliseconds that a note of what is played stays.</summary>
    private const int PlayNote = 3000;

    /// <summary>The captions of the whole film.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="times">Where its chapters begin in the recording; null for as planned.</param>
    public static CaptionTrack OfFilm(FilmPlan plan, RecordedTimes? times = null)
    {
        var segments = FilmSegment.Of(plan);
        times ??= RecordedTimes.Planned(segments);
        var tracks = segments.Select((segment, i) => OfSegment(segment, Milliseconds(times.Starts[i]), Milliseconds(times.EndOf(i)))).ToArray();
        return new CaptionTrack(tracks.SelectMany(t => t.Captions).ToValueList(), tracks.SelectMany(t => t.Problems).ToValueList());
    }

    /// <summary>The captions of one chapter, from its own start on.</summary>
    public static CaptionTrack OfSegment(FilmSegment segment) => OfSegment(segment, 0, Milliseconds(segment.Seconds));

    /// <summary>The captions of one chapter.</summary>
    /// <param name="segment">The chapter.</param>
    /// <param name="start">Where it begins, in milliseconds.</param>
    /// <param name="end">Where it ends.</param>
    public static CaptionTrack OfSegment(FilmSegment segment, long start, long end)
    {
        var words = CaptionCutter.Words(segment.Sentences);
        // A recording is faster or slower than planned all through.
        var factor = segment.Seconds > 0 ? (end - start) / 1000.0 / segment.Seconds : 0;
        var spoken = CaptionCutter.Of(words).Select(cut => new Caption(At(cut.First), At(cut.End), cut.Lines)).ToList();
        var (shown, missing) = Fit(spoken, start, end);
        var problems = new List<string>();
        if (missing > 0)
        {
            var needed = spoken.Sum(c => Caption.ReadingTime(c.Lines)) / 1000.0;
            problems.Add($"“{segment.Title}” is spoken faster than it can be read: its captions need {ClockText.Of(needed)} and there are {ClockText.Of((end - start) / 1000.0)}, "
                + $"so the last {(missing == 1 ? "one is" : $"{missing} are")} left out. Speak slower, or tell it shorter.");
        }
        AddPlays(shown, segment, start, factor, end);
        return new CaptionTrack(shown.ToValueList(), problems.ToValueList());

        long At(int word) => start + (long)(factor * segment.SaySeconds * word / Math.Max(1, words.Length) * 1000);
    }

    // Each stays until it has been read, which may be into the next one's time or the playing; where that runs past the end, all move back.
    private static (List<Caption> Shown, int Missing) Fit(List<Caption> spoken, long start, long end)
    {
        for (var count = spoken.Count; count > 0; count--)
        {
            var shown = new List<Caption>();
            foreach (var caption in spoken.Take(count))
            {
                var from = Math.Max(caption.Start, shown.Count > 0 ? shown[^1].End : start);
                shown.Add(caption with { Start = from, End = Math.Max(caption.End, from + Caption.ReadingTime(caption.Lines)) });
            }
            var limit = end;
            for (var i = count - 1; i >= 0 && shown[i].End > limit; i--)
            {
                shown[i] = shown[i] with { End = limit, Start = Math.Min(shown[i].Start, limit - Caption.ReadingTime(shown[i].Lines)) };
                limit = shown[i].Start;
            }
            if (shown[0].Start >= start) return (shown, spoken.Count - count);
        }
        return ([], spoken.Count);
    }

    private static void AddPlays(List<Caption> shown, FilmSegment segment, long start, double factor, long end)
    {
        var at = segment.SaySeconds;
        foreach (var play in segment.Plays)
        {
            var from = Math.Max(start + (long)(factor * at * 1000), shown.Count > 0 ? shown[^1].End : start);
            at += play.Seconds;
            var to = Math.Min(Math.Min(from + PlayNote, end), start + (long)(factor * at * 1000));
            ValueList<string> lines = [$"[Plays it at {play.Percent} percent{(play.Times == 2 ? ", twice" : "")}]"];
            if (to - from >= Caption.ReadingTime(lines)) shown.Add(new Caption(from, to, lines));
        }
    }

    private static long Milliseconds(double seconds) => (long)Math.Round(seconds * 1000);
}
