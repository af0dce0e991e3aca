using System.Collections.Immutable;
using Fretlore.Engraving.Fonts;
using Fretlore.Hands.Plans;
using Fretlore.Lesson.Plans;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Kit;

/// <summary>What the sections of a kit are made of. What several of them need is made once, when it is first asked for; they may ask at the same time.</summary>
/// <param name="song">The song.</param>
/// <param name="read">Reads it.</param>
/// <param name="plan">Plans the fretting hand through it.</param>
/// <param name="options">How the kit was asked for.</param>
/// <param name="stop">Ends the making early.</param>
public sealed class KitSource(Song song, Func<SongReading> read, Func<SongHands> plan, KitOptions options, CancellationToken stop = default)
{
    private readonly Lazy<SongReading> reading = new(read);
    private readonly Lazy<SongHands> hands = new(plan);
    private readonly Lazy<PerformedSong> played = new(() => Performer.Play(song));
    private readonly Lazy<FontLibrary> fonts = new(() => new FontLibrary());
    private readonly Lock gate = new();
    private FilmPlanResult? film;
    private ImmutableArray<KitLick> licks;
    private ImmutableArray<KitSolo> solos;
    private readonly Lock soundGate = new();
    private (KitSound? Sound, string? WhyNot)? sound;

    public Song Song => song;

    public SongReading Reading => reading.Value;

    public SongHands Hands => hands.Value;

    /// <summary>The song as it sounds, at full speed.</summary>
    public PerformedSong Played => played.Value;

    public FontLibrary Fonts => fonts.Value;

    /// <summary>The plan of the lesson's film.</summary>
    public FilmPlanResult Film
    {
        get
        {
            lock (gate) return film ??= FilmPlanner.Plan(Played, Reading, Hands);
        }
    }

    public KitOptions Options => options;

    /// <summary>The song without its lesson and recordings: what is played and printed depends on no more.</summary>
    internal Song SongAlone => song.Lesson is null && song.Recordings.Count == 0 ? song : song with { Lesson = null, Recordings = [] };

    /// <summary>What was made for the last kit of this sheet; null to make everything anew.</summary>
    public KitCache? Cache { get; init; }

    public CancellationToken Stop => stop;

    /// <summary>The same source, ended early by another signal.</summary>
    internal KitSource StoppedBy(CancellationToken other) => new(song, () => Reading, () => Hands, options, other) { Cache = Cache };

    /// <summary>The licks that get a card.</summary>
    internal ImmutableArray<KitLick> Licks
    {
        get
        {
            lock (gate) return licks.IsDefault ? licks = KitLick.Of(this) : licks;
        }
    }

    /// <summary>What was made from the same input for the last kit, where there is a cache; or else made now.</summary>
    /// <inheritdoc cref="KitCache.Get"/>
    internal T Once<T>(string what, object input, Func<T> make, bool isSound = false)
        where T : notnull => Cache is { } cache ? cache.Get(what, input, make, isSound) : make();

    /// <summary>The free stretches, played out once.</summary>
    internal ImmutableArray<KitSolo> Solos
    {
        get
        {
            lock (gate) return solos.IsDefault ? solos = Once("solos", SongAlone, () => KitSolo.Of(SongAlone, Reading)) : solos;
        }
    }

    /// <summary>The song's sound; null when the kit is to have none, or when it can't be played: see <see cref="WhyNoSound"/>.</summary>
    /// <param name="progress">Told how much is done, from 0 to 1, by the first who asks.</param>
    /// <exception cref="IOException">There is no room to work in.</exception>
    public KitSound? Sound(Action<double>? progress = null)
    {
        if (options.SoundRoom is not { } room) return null;
        lock (soundGate)
        {
            sound ??= Once("sound", (SongAlone, options), () => KitSound.Make(this, room, progress), isSound: true);
            return sound.Value.Sound;
        }
    }

    /// <summary>Why a song can't be played, a whole sentence; null when it can, and before <see cref="Sound"/> was asked for.</summary>
    public string? WhyNoSound => sound?.WhyNot;
}
