using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>The places of a part where the sheet itself says the chord symbol.</summary>
internal static class StatedSymbols
{
    internal static List<ChordMoment> Of(ValueList<PartBar> content, ImmutableArray<Key> keys, List<Segment>[] track, SegmentNamer namer)
    {
        var stated = new List<ChordMoment>();
        for (var bar = 0; bar < content.Count; bar++)
        {
            var before = stated.Count;
            foreach (var strand in content[bar].Strands)
            {
                foreach (var item in strand.Events)
                {
                    if (item.ChordSymbol is not { Length: > 0 } symbol) continue;
                    stated.Add(new ChordMoment(bar, item.Start, Candidates(item, track[bar], keys[bar], namer, symbol), symbol));
                }
            }
            stated.Sort(before, stated.Count - before, Comparer<ChordMoment>.Create(static (a, b) => a.At.CompareTo(b.At)));
        }
        return stated;
    }

    // What sounds there; where nothing does, the symbol stands for itself.
    private static ImmutableArray<ChordReading> Candidates(Event item, List<Segment> segments, Key key, SegmentNamer namer, string symbol)
    {
        foreach (var segment in segments)
        {
            if (segment.Start <= item.Start && segment.End > item.Start && segment.Notes.Count > 0)
            {
                return (segment.Naming ?? namer.Name(segment.Heights(segment.Set), key)).Candidates;
            }
        }
        return [ChordWording.Stated(symbol, key)];
    }
}
