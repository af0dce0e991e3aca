using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Reading;
using Fretlore.RoadMaps.Stretches;
using Fretlore.RoadMaps.Takes;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;

namespace Fretlore.Lesson.Kit;

/// <summary>A free stretch played out once by its rules: phrase by phrase, what the practice page calls and the student answers.</summary>
/// <param name="Use">The road map where it stands.</param>
/// <param name="Song">The song with the take in the road map's place.</param>
/// <param name="Phrases">The take's phrases in order; bars are counted from the stretch's first, from 1.</param>
internal sealed record KitSolo(RoadMapUse Use, Song Song, ValueList<TakePhrase> Phrases)
{
    // A take that asks neither little nor all; always the same one.
    private const int Seed = 1;
    private const double Level = 0.5;

    /// <summary>One for each road map, where it is played first; none for one whose rules no solo keeps.</summary>
    public static ImmutableArray<KitSolo> Of(Song song, SongReading reading) =>
    [
        .. from use in song.RoadMapUses.OrderBy(use => use.FirstBar).DistinctBy(use => (use.RoadMap, use.Part))
           let map = song.RoadMaps.FirstOrDefault(map => map.Name == use.RoadMap)
           where map is not null
           let take = new TakeMaker(SoloStretch.Of(song, reading, map, use)).Make(Seed, 1, Level)
           where take is not null
           select new KitSolo(use, With(song, use, take), [.. take.Phrases]),
    ];

    /// <summary>The take as the part plays it in the song, alone, ready to be heard; null when it can't be played.</summary>
    public SongMix? Prepare()
    {
        var request = new SoundRequest
        {
            Parts = [Use.Part],
            FromBar = Song.Bars[Use.FirstBar].Number,
            ToBar = Song.Bars[Use.FirstBar + Use.BarCount - 1].Number,
        };
        return SongMixer.Prepare(Song, request) is SoundResult.Ready { Mix: var mix } ? mix : null;
    }

    /// <summary>Plays it.</summary>
    /// <param name="mix">The take.</param>
    /// <param name="room">Gives a stream to work in.</param>
    /// <param name="steps">What the song's sound was turned up by.</param>
    /// <param name="stop">Ends it early.</param>
    /// <exception cref="IOException">There is no room to work in.</exception>
    public static ImmutableArray<byte> Write(SongMix mix, Func<Stream> room, int steps, CancellationToken stop)
    {
        using var scratch = room();
        return MonoFile.Write(mix, scratch, steps, stop);
    }

    // Notes of the take are numbered on from the song's own.
    private static Song With(Song song, RoadMapUse use, SoloTake take)
    {
        var next = song.NoteCount;
        var part = song.Parts[use.Part];
        var bars = part.Bars.Items.ToBuilder();
        for (var i = 0; i < use.BarCount; i++) bars[use.FirstBar + i] = Numbered(take.Bars[i]);
        return song with
        {
            Parts = new ValueList<Part>(song.Parts.Items.SetItem(use.Part, part with { Bars = bars.ToImmutable().ToValueList() })),
            RiffUses = song.RiffUses.Where(riff => riff.Part != use.Part || riff.FirstBar + riff.BarCount <= use.FirstBar || riff.FirstBar >= use.FirstBar + use.BarCount).ToValueList(),
            RoadMapUses = song.RoadMapUses.Where(other => other != use).ToValueList(),
            NoteCount = next,
        };

        PartBar Numbered(PartBar bar) => bar with { Strands = bar.Strands.Select(strand => strand with { Events = strand.Events.Select(Item).ToValueList() }).ToValueList() };

        Event Item(Event item) => item with { Graces = item.Graces.Select(Number).ToValueList(), Notes = item.Notes.Select(Number).ToValueList() };

        Note Number(Note note) => note with { Id = new NoteId(next++) };
    }
}
