using Fretlore.Engraving.Fonts;
using Fretlore.Hands.Plans;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Kit;

/// <summary>What the sections of a kit are made of. What several of them need is made once, when it is first asked for.</summary>
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

    public Song Song => song;

    public SongReading Reading => reading.Value;

    public SongHands Hands => hands.Value;

    /// <summary>The song as it sounds, at full speed.</summary>
    public PerformedSong Played => played.Value;

    public FontLibrary Fonts => fonts.Value;

    public KitOptions Options => options;

    public CancellationToken Stop => stop;
}
