using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Score;

namespace Fretlore.Hands.Retuning;

/// <summary>Moves what a song says in note names: keys, stated chord symbols, and the rules of road maps.</summary>
internal sealed class SongTransposer
{
    private const int MostSigns = 7;

    private readonly int fifths;

    public SongTransposer(Song song, int semitones)
    {
        // Each semitone is seven fifths; twelve fifths either way sound the same. The way with the fewest signs is taken.
        var keys = song.Bars.Select(bar => bar.Key).Concat(song.Riffs.SelectMany(riff => riff.Bars.Select(bar => bar.Key))).OfType<Key>().ToHashSet();
        var up = NoteName.Wrap(7 * semitones, 12);
        fifths = ((int[])[up, up - 12]).OrderBy(way => keys.Select(key => Math.Abs(key.Signature + way)).DefaultIfEmpty(Math.Abs(way)).Max()).ThenBy(Math.Abs).First();
        if (semitones == 0) fifths = 0;
    }

    public ValueList<Bar> Bars(ValueList<Bar> bars) => fifths == 0 ? bars : bars.Select(bar => bar.Key is { } key ? bar with { Key = Moved(key) } : bar).ToValueList();

    public string Symbol(string symbol)
    {
        if (fifths == 0 || !ChordSymbol.TryParse(symbol, out var chord, out _)) return symbol;
        var root = chord.Name.Root.ToString();
        if (!symbol.StartsWith(root, StringComparison.Ordinal)) return symbol;
        var slash = symbol.LastIndexOf('/');
        var hasBass = slash > 0 && chord.Name.Bass != chord.Name.Root;
        var kind = hasBass ? symbol[root.Length..slash] : symbol[root.Length..];
        return Moved(chord.Name.Root) + kind + (hasBass ? "/" + Moved(chord.Name.Bass) : "");
    }

    public RoadMap Map(RoadMap map) => fifths == 0 ? map : map.WithNotes(Moved);

    private Key Moved(Key key)
    {
        var moved = key with { Tonic = Moved(key.Tonic) };
        while (moved.Signature > MostSigns) moved = moved with { Tonic = NoteName.FromFifths(moved.Tonic.Fifths - 12) };
        while (moved.Signature < -MostSigns) moved = moved with { Tonic = NoteName.FromFifths(moved.Tonic.Fifths + 12) };
        return moved;
    }

    private NoteName Moved(NoteName name)
    {
        var moved = NoteName.FromFifths(name.Fifths + fifths);
        return Math.Abs(moved.Alteration) <= 1 ? moved : NoteName.FromFifths(moved.Fifths - 12 * Math.Sign(moved.Alteration));
    }
}
