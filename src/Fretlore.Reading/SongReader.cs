using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Reading.Functions;
using Fretlore.Reading.Keys;
using Fretlore.Reading.Moments;
using Fretlore.Reading.Phrases;
using Fretlore.Reading.Roles;
using Fretlore.Reading.Spelling;
using Fretlore.Score;

namespace Fretlore.Reading;

/// <summary>Reads a song: spells every note and finds its degree, names chords where they are, and scales by phrase.</summary>
public static class SongReader
{
    /// <summary>The reading of a song; cost grows with the number of notes.</summary>
    public static SongReading Read(Song song)
    {
        var stretches = SongKeys.Stretches(song);
        var keys = SongKeys.OfBars(stretches);
        var namer = new SegmentNamer();
        var tracks = song.Parts.Items.Select(part => ChordTrack.Of(part.Bars, song.Bars, keys, namer)).ToArray();
        new BandContext(song, tracks, keys).Apply();
        var pitches = new Pitch[song.NoteCount];
        var degrees = new Interval[song.NoteCount];
        var roles = new NoteRole[song.NoteCount];
        var parts = ImmutableArray.CreateBuilder<PartReading>(song.Parts.Count);
        var spelling = new SpellingTable();
        var speller = new NoteSpeller(keys, song.Bars, spelling, song.NoteCount);
        for (var part = 0; part < song.Parts.Count; part++)
        {
            speller.Add(song.Parts[part].Bars, new LocalHarmony(part, tracks));
            parts.Add(ReadPart(song, part, keys, tracks, namer));
        }
        speller.Settle(pitches, degrees);
        var finder = new RoleFinder(keys, song.Bars, pitches, roles);
        for (var part = 0; part < song.Parts.Count; part++) finder.Find(song.Parts[part].Bars, new LocalHarmony(part, tracks));
        var uses = SongKeys.FirstUses(song);
        foreach (var riff in song.Riffs)
        {
            var own = SongKeys.Of(keys, riff, uses);
            var harmony = RiffPlace.Of(song, riff) is var (part, bar)
                ? new LocalHarmony(part, tracks, bar) : new LocalHarmony(0, [ChordTrack.Of(riff.Content, riff.Bars, own, namer)]);
            ReadRiff(riff, own, harmony, spelling, pitches, degrees, roles);
        }
        // Nothing keeps the arrays, so that they need not be copied.
        return new SongReading(
            ImmutableCollectionsMarshal.AsImmutableArray(pitches), ImmutableCollectionsMarshal.AsImmutableArray(degrees), parts.MoveToImmutable(),
            Shapes(song, keys))
        {
            Home = SongKeys.Home(song),
            Keys = keys,
            KeyStretches = stretches,
            Roles = ImmutableCollectionsMarshal.AsImmutableArray(roles),
        };
    }

    /// <summary>The chords of each part as its notes make them, whatever symbols the sheet states, without the rest of a reading: for asking whether a symbol says more than the notes do.</summary>
    public static ImmutableArray<ImmutableArray<ChordMoment>> Chords(Song song)
    {
        var keys = SongKeys.OfBars(SongKeys.Stretches(song));
        var namer = new SegmentNamer();
        var tracks = song.Parts.Items.Select(part => ChordTrack.Of(part.Bars, song.Bars, keys, namer)).ToArray();
        new BandContext(song, tracks, keys).Apply();
        return [.. tracks.Select(track => new MomentPicker(song, track).Pick([]))];
    }

    private static PartReading ReadPart(Song song, int part, ImmutableArray<Key> keys, List<Segment>[][] tracks, SegmentNamer namer)
    {
        var overrides = StatedSymbols.Of(song.Parts[part].Bars, keys, tracks[part], namer);
        var chords = Progression.WithFunctions(new MomentPicker(song, tracks[part]).Pick(overrides), keys);
        return new PartReading(chords, PhraseReader.Read(song, part, keys))
        {
            Cadences = Progression.Cadences(chords, keys, song.Sections),
            Conflicts = overrides.Count == 0 ? [] : new SymbolCheck(song, tracks).Of(part, chords),
        };
    }

    private static void ReadRiff(
        Riff riff, ImmutableArray<Key> keys, LocalHarmony harmony, SpellingTable spelling, Pitch[] pitches, Interval[] degrees, NoteRole[] roles)
    {
        var speller = new NoteSpeller(keys, riff.Bars, spelling, 0);
        speller.Add(riff.Content, harmony);
        speller.Settle(pitches, degrees);
        new RoleFinder(keys, riff.Bars, pitches, roles).Find(riff.Content, harmony);
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
