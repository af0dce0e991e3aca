using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Keeps the chord symbols of a file where they say something else than the notes do.</summary>
internal static class StatedSymbols
{
    public static Song Kept(Song song)
    {
        if (!song.Parts.Any(p => p.Bars.Any(b => b.Strands.Any(s => s.Events.Any(e => e.ChordSymbol is not null))))) return song;
        var reading = SongReader.Read(Without(song, (_, _, _) => false));
        var computed = new HashSet<(int, int, Beats, string)>();
        for (var part = 0; part < reading.Parts.Length; part++)
        {
            foreach (var chord in reading.Parts[part].Chords) computed.Add((part, chord.Bar, chord.At, chord.Best.Symbol));
        }
        return Without(song, (part, bar, item) => !computed.Contains((part, Source(song.Parts[part], bar), item.Start, item.ChordSymbol!)));
    }

    // A bar that is played again has what the bar has that it is like.
    private static int Source(Part part, int bar)
    {
        while (part.Bars[bar].Repeats > 0) bar -= part.Bars[bar].Repeats;
        return bar;
    }

    private static Song Without(Song song, Func<int, int, Event, bool> keeps) => song with
    {
        Parts = song.Parts.Select((p, part) => p with
        {
            Bars = p.Bars.Select((b, bar) => b with
            {
                Strands = b.Strands.Select(s => s with
                {
                    Events = s.Events.Select(e => e.ChordSymbol is null || keeps(part, bar, e) ? e : e with { ChordSymbol = null }).ToValueList(),
                }).ToValueList(),
            }).ToValueList(),
        }).ToValueList(),
    };
}
