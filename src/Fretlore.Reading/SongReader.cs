using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Reading.Keys;
using Fretlore.Reading.Moments;
using Fretlore.Reading.Phrases;
using Fretlore.Reading.Spelling;
using Fretlore.Score;

namespace Fretlore.Reading;

/// <summary>Reads a song: spells every note and finds its degree, names chords where they are, and scales by phrase.</summary>
public static class SongReader
{
    /// <summary>The reading of a song; cost grows with the number of notes.</summary>
    public static SongReading Read(Song song)
    {
        var keys = SongKeys.Of(song);
        var namer = new SegmentNamer();
        var tracks = song.Parts.Items.Select(part => ChordTrack.Of(part.Bars, song.Bars, keys, namer)).ToArray();
        var pitches = new Pitch[song.NoteCount];
        var degrees = new Interval[song.NoteCount];
        var parts = ImmutableArray.CreateBuilder<PartReading>(song.Parts.Count);
        var speller = new NoteSpeller(keys, song.Bars);
        for (var part = 0; part < song.Parts.Count; part++)
        {
            var harmony = new LocalHarmony(part, tracks);
            speller.Add(song.Parts[part].Bars, harmony);
            var overrides = StatedSymbols.Of(song.Parts[part].Bars, keys, tracks[part], namer);
            var chords = new MomentPicker(song, tracks[part]).Pick(overrides);
            parts.Add(new PartReading(chords, PhraseReader.Read(song, part, keys)));
        }
        speller.Settle(pitches, degrees);
        foreach (var riff in song.Riffs)
        {
            var riffKeys = SongKeys.Of(song, keys, riff);
            var track = ChordTrack.Of(riff.Content, riff.Bars, riffKeys, namer);
            var own = new NoteSpeller(riffKeys, riff.Bars);
            own.Add(riff.Content, new LocalHarmony(0, [track]));
            own.Settle(pitches, degrees);
        }
        return new SongReading([.. pitches], [.. degrees], parts.ToImmutable(), Shapes(song, keys)) { Keys = keys };
    }

    private static ImmutableArray<ShapeReading> Shapes(Song song, ImmutableArray<Key> keys)
    {
        var context = new ChordContext(keys.IsEmpty ? null : keys[0]);
        return
        [
            .. song.Shapes.Items.Select(named =>
                new ShapeReading(named.Name, ChordNamer.Name([.. named.Shape.On(named.Neck).Select(n => n.Height)], context).Candidates)),
        ];
    }
}
