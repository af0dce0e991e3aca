using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Score;

namespace Fretlore.Reading.Moments;

/// <summary>Compares the symbols that the sheet states with the notes that sound there, in all parts together.</summary>
/// <remarks>
/// A symbol may say less than sounds (Am over an Am9) and may leave out what a chord may leave out. It disagrees when a tone it needs sounds nowhere
/// until the next symbol, or when most of what its own part sounds is not in it. Where the part plays no chord, the symbol stands for the band's
/// harmony and is not judged.
/// </remarks>
internal sealed class SymbolCheck(Song song, IReadOnlyList<List<Segment>[]> tracks)
{
    internal ImmutableArray<SymbolConflict> Of(int part, ImmutableArray<ChordMoment> chords)
    {
        var found = ImmutableArray.CreateBuilder<SymbolConflict>();
        for (var i = 0; i < chords.Length; i++)
        {
            if (chords[i].Override is not { } symbol || IsNoChord(symbol)) continue;
            var place = chords[i];
            if (EventAt(part, place) is not { } note) continue;
            if (!ChordSymbol.TryParse(symbol, out var stated, out _))
            {
                found.Add(new SymbolConflict(note, symbol, null, []));
                continue;
            }
            var own = tracks[part][place.Bar].FirstOrDefault(s => s.Start <= place.At && s.End > place.At);
            if (own?.Naming is null) continue;
            var isLast = i + 1 == chords.Length;
            var end = !isLast && chords[i + 1].Bar == place.Bar ? chords[i + 1].At : song.Bars[place.Bar].Length;
            var (sounding, lowest) = Sounding(place.Bar, place.At, end);
            var missing = Missing(stated, sounding, lowest);
            var foreign = own.Set.From(stated.Name.Root.PitchClass).Except(stated.Tones)
                .Without(NoteName.Wrap(stated.Name.Bass.PitchClass - stated.Name.Root.PitchClass, 12)).Count;
            if (missing.Length > 0 || 2 * foreign > own.Set.Count) found.Add(new SymbolConflict(note, symbol, place.Best.Symbol, missing));
        }
        return found.ToImmutable();
    }

    // "No chord", as lead sheets write it.
    private static bool IsNoChord(string symbol) =>
        symbol.Replace(".", "", StringComparison.Ordinal).Equals("NC", StringComparison.OrdinalIgnoreCase);

    private static ImmutableArray<NoteName> Missing(ChordSymbol stated, PitchClassSet sounding, int lowest)
    {
        var missing = ImmutableArray.CreateBuilder<NoteName>();
        var root = stated.Name.Root;
        foreach (var needed in stated.Needed)
        {
            if (!sounding.Contains((root.PitchClass + needed) % 12)) missing.Add(root.Transpose(stated.Name.Kind.DegreeOf(needed)));
        }
        var bass = stated.Name.Bass;
        if (bass != root && lowest != bass.PitchClass && !missing.Contains(bass)) missing.Add(bass);
        return missing.ToImmutable();
    }

    private (PitchClassSet Set, int Lowest) Sounding(int bar, Beats from, Beats to)
    {
        var set = default(PitchClassSet);
        Height? lowest = null;
        foreach (var track in tracks)
        {
            foreach (var segment in track[bar])
            {
                foreach (var note in segment.Notes)
                {
                    if (note.Start >= to || note.End <= from) continue;
                    set = set.With(note.Note.Sounding.PitchClass);
                    if (lowest is null || note.Note.Sounding < lowest) lowest = note.Note.Sounding;
                }
            }
        }
        return (set, lowest?.PitchClass ?? -1);
    }

    private NoteId? EventAt(int part, ChordMoment place)
    {
        foreach (var strand in song.Parts[part].Bars[place.Bar].Strands)
        {
            foreach (var item in strand.Events)
            {
                if (item.Start == place.At && item.ChordSymbol == place.Override && item.Notes.Count > 0) return item.Notes[0].Id;
            }
        }
        return null;
    }
}
