using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>The stretches of harmony of a part, bar by bar; those that are chords have their names.</summary>
internal static class ChordTrack
{
    internal static List<Segment>[] Of(ValueList<PartBar> content, ValueList<Bar> bars, ImmutableArray<Key> keys, SegmentNamer namer)
    {
        var track = new List<Segment>[content.Count];
        var grid = new BeatGrid(Meter.FourFour);
        var notes = new List<SoundedNote>();
        for (var bar = 0; bar < content.Count; bar++)
        {
            grid = grid.For(bars[bar].Meter);
            BarNotes.Read(content[bar], bars[bar].Length, notes);
            track[bar] = Segmenter.Cut(notes, grid);
            namer.Name(track[bar], keys[bar]);
            if (bar > 0 && track[bar - 1] is [.., { Best: not null } before]) before.RingsOn = RingsOn(before, bars[bar - 1].Length, track[bar], notes, bars[bar].Length);
        }
        return track;
    }

    // What lets ring goes on over the bar line until its lowest string is needed, something lower sounds, another shape is taken or another chord begins.
    private static Beats RingsOn(Segment before, Beats barEnd, List<Segment> segments, List<SoundedNote> notes, Beats length)
    {
        var lowest = before.Lowest;
        if (!lowest.Note.LetsRing || before.End != barEnd) return Beats.Zero;
        foreach (var segment in segments)
        {
            if (segment.Best is not null) length = Beats.Min(length, segment.Start);
        }
        foreach (var note in notes)
        {
            var ends = note.Note.String == lowest.Note.String || note.Midi <= lowest.Midi || note.Event.Shape is { } shape && shape != before.Shape;
            if (ends) length = Beats.Min(length, note.Start);
        }
        return length;
    }
}
