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
        }
        return track;
    }
}
