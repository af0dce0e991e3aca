using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Music;
using Fretlore.Performance;

namespace Fretlore.Lesson.Overlays;

/// <summary>Something that happens in a moving tab.</summary>
/// <param name="Frame">The frame shown when it happens.</param>
/// <param name="X">Where on the strip it stands, in staff spaces.</param>
/// <param name="At">Quarter notes from the first bar's start.</param>
/// <param name="Bar">The bar it is in, counted from 1 as played.</param>
internal readonly record struct TabMoment(long Frame, double X, Beats At, int Bar);

/// <summary>How a strip of tablature passes the cursor: in each frame the place that sounds is under it.</summary>
internal sealed class TabMotion
{
    private readonly FrameClock clock;

    private TabMotion(FrameClock clock, ImmutableArray<TabMoment> moments, long frameCount)
    {
        (this.clock, Moments, FrameCount) = (clock, moments, frameCount);
    }

    /// <summary>Each onset, in order.</summary>
    public ImmutableArray<TabMoment> Moments { get; }

    /// <summary>Frames from the first click of the count-in to the end of the last bar.</summary>
    public long FrameCount { get; }

    /// <param name="strip">The engraved strip.</param>
    /// <param name="played">The unrolled riff as it sounds at full speed.</param>
    /// <param name="clock">Musical time in frames, the count-in before zero.</param>
    public static TabMotion Of(DrawnPage strip, PerformedSong played, FrameClock clock)
    {
        var places = new Dictionary<int, double>();
        Find(strip.Marks, places);
        var moments = ImmutableArray.CreateBuilder<TabMoment>();
        var notes = played.Parts[0].Notes.Where(note => !note.IsGrace && places.ContainsKey(note.Note.Index))
            .Select(note => (Bar: note.Bar, At: WrittenStart(played, note), X: places[note.Note.Index]));
        foreach (var moment in notes.GroupBy(n => n.At).OrderBy(g => g.Key))
        {
            var x = moment.Min(n => n.X);
            // A note that is drawn no further right than the one before, such as a shifted head, moves nothing.
            if (moments.Count > 0 && x <= moments[^1].X) continue;
            moments.Add(new TabMoment(clock.FrameAt(moment.Key), x, moment.Key, moment.First().Bar + 1));
        }
        return new TabMotion(clock, moments.ToImmutable(), clock.FramesTo(played.Length));
    }

    /// <summary>The place on the strip that is under the cursor in a frame, in staff spaces.</summary>
    public double XAt(long frame)
    {
        if (Moments.Length == 0) return 0;
        var seconds = frame / (double)clock.FramesASecond;
        if (Moments.Length == 1) return Moments[0].X;
        // Before the first onset and after the last the strip goes on as fast as beside them.
        var i = 1;
        while (i + 1 < Moments.Length && clock.SecondsAt(Moments[i].At).ToDouble() <= seconds) i++;
        var (from, to) = (clock.SecondsAt(Moments[i - 1].At).ToDouble(), clock.SecondsAt(Moments[i].At).ToDouble());
        var x = Moments[i - 1].X + (Moments[i].X - Moments[i - 1].X) * (seconds - from) / (to - from);
        return x;
    }

    // Notes are strummed and swung in the performance; the tab stands where they are written.
    private static Beats WrittenStart(PerformedSong played, PerformedNote note)
    {
        var bar = played.Bars[note.Bar];
        foreach (var item in played.Parts[0].Part.Bars[bar.Bar].Strands.SelectMany(s => s.Events))
        {
            if (item.Notes.Any(n => n.Id == note.Note)) return bar.Start + item.Start;
        }
        return note.Onset;
    }

    private static void Find(ValueList<Mark> marks, Dictionary<int, double> places)
    {
        foreach (var mark in marks)
        {
            if (mark is not Group group) continue;
            if (group.Id is { } id && id.StartsWith("note-", StringComparison.Ordinal)
                && int.TryParse(id.AsSpan(5), NumberStyles.None, CultureInfo.InvariantCulture, out var note)
                && group.Marks.OfType<Text>().FirstOrDefault() is { } number) places.TryAdd(note, number.At.X);
            Find(group.Marks, places);
        }
    }
}
