using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.Import;

/// <summary>Keeps the chord symbols of a file where they say something else than the notes do.</summary>
internal static class StatedSymbols
{
    public static Song Kept(Song song)
    {
        if (!song.Parts.Any(p => p.Bars.Any(States))) return song;
        var computed = new HashSet<(int, int, Beats, string)>();
        var chords = SongReader.Chords(song);
        for (var part = 0; part < chords.Length; part++)
        {
            foreach (var chord in chords[part]) computed.Add((part, chord.Bar, chord.At, chord.Best.Symbol));
        }
        return song with
        {
            Parts = song.Parts.Select((p, part) => p with
            {
                Bars = p.Bars.Select((b, bar) => States(b) ? Without(b, e => computed.Contains((part, Source(p, bar), e.Start, e.ChordSymbol!))) : b).ToValueList(),
            }).ToValueList(),
        };
    }

    private static bool States(PartBar bar) => bar.Strands.Any(s => s.Events.Any(e => e.ChordSymbol is not null));

    // A bar that is played again has what the bar has that it is like.
    private static int Source(Part part, int bar)
    {
        while (part.Bars[bar].Repeats > 0) bar -= part.Bars[bar].Repeats;
        return bar;
    }

    private static PartBar Without(PartBar bar, Func<Event, bool> drops) => bar with
    {
        Strands = bar.Strands.Select(s => s with
        {
            Events = s.Events.Select(e => e.ChordSymbol is not null && drops(e) ? e with { ChordSymbol = null } : e).ToValueList(),
        }).ToValueList(),
    };
}
