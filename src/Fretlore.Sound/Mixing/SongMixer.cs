using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Sound.Rigs;

namespace Fretlore.Sound.Mixing;

/// <summary>Makes mixes of a song: all of it, parts alone, without parts, bars, sections and riffs, loops, any speed.</summary>
public static class SongMixer
{
    private const double Tail = 1.5; // Seconds for the last note and the room to die away.
    private const double LongestSeconds = 3 * 60 * 60;
    private const double ShortestLoop = 0.1;

    /// <summary>All that a riff played alone depends on, to be compared by value: while it is the same, it sounds the same.</summary>
    /// <param name="song">The song.</param>
    /// <param name="riff">One of its riffs.</param>
    public static object InputOf(Song song, Riff riff) => RiffAlone.Of(song, riff) with { NoteCount = 0 };

    public static SoundResult Prepare(Song song, SoundRequest request)
    {
        if (request.Speed is < SoundRequest.SlowestSpeed or > SoundRequest.FastestSpeed) return SoundRefusals.Speed(request.Speed);
        if (request is { Section: not null, Riff: not null }) return SoundRefusals.SectionAndRiff();
        if (request.Loop && request.CountIn) return SoundRefusals.CountedLoop();
        if (request.Riff is null || request.Parts.Count + request.Without.Count > 0) return Prepare(song, request, null);
        return StretchFinder.RiffOf(song, request.Riff) is { } riff ? Prepare(song, request, RiffAlone.Of(song, riff)) : SoundRefusals.Riff(song, request.Riff);
    }

    private static SoundResult Prepare(Song whole, SoundRequest request, Song? riffAlone)
    {
        var song = riffAlone ?? whole;
        var chosen = Enumerable.Range(0, song.Parts.Count)
            .Where(i => (request.Parts.Count == 0 || request.Parts.Contains(i)) && !request.Without.Contains(i)).ToList();
        if (chosen.Count == 0 && !request.Click && !request.CountIn) return SoundRefusals.NoPart();

        var rigs = new Rig[song.Parts.Count];
        foreach (var i in chosen)
        {
            var name = song.Parts[i].Sound;
            if ((name is null ? RigTable.UsualFor(song.Parts[i]) : RigTable.Find(name)) is not { } rig) return SoundRefusals.Rig(song.Parts[i], name!);
            rigs[i] = rig;
        }

        var performed = Performer.Play(AtSpeed(song, request.Speed));
        var (found, refusal) = StretchFinder.Find(performed, riffAlone is null ? request : request with { Riff = null });
        if (found is not { } stretch) return refusal!;
        if (request.CountIn) stretch = stretch.CountedIn(performed);
        if (request.Loop) stretch = stretch.AsLoop();
        var seconds = stretch.LeadIn + stretch.End - stretch.Start;
        if (seconds > LongestSeconds) return SoundRefusals.TooLong(seconds);
        if (request.Loop && seconds < ShortestLoop) return SoundRefusals.TooShort();

        var tracks = ImmutableArray.CreateBuilder<ITrack>();
        foreach (var i in chosen) tracks.Add(new PartTrack(performed, performed.Parts[i], rigs[i], stretch, AsideOf(song, i, rigs[i]), request.Exact));
        var parts = chosen.Select(i => (int?)i).ToList();
        if (request.Click || request.CountIn)
        {
            tracks.Add(ClickTrack.Of(performed, stretch, request.CountIn, request.Click));
            parts.Add(null);
        }
        return new SoundResult.Ready(new SongMix(tracks.ToImmutable())
        {
            Info = song.Info with { Title = SoundTitle.Of(whole, request, riffAlone?.Parts[0]) },
            Parts = [.. parts],
            Marks = SoundMark.Of(performed, stretch),
            Length = request.Loop ? stretch.Length : SampleRate.At(seconds + Tail),
            RunUp = stretch.RunUp,
        });
    }

    // Where a part stands depends on the whole song, so that it stands there alone as well.
    private static double AsideOf(Song song, int part, Rig rig)
    {
        if (song.Parts.Count == 1) return 0;
        var before = Enumerable.Range(0, part).Count(i =>
            (song.Parts[i].Sound is { } name ? RigTable.Find(name) : RigTable.UsualFor(song.Parts[i]))?.Aside > 0);
        return before % 2 == 0 ? -rig.Aside : rig.Aside;
    }

    private static Song AtSpeed(Song song, decimal speed) => speed == 1 ? song : song with
    {
        Bars = song.Bars.Select(bar => bar with
        {
            Tempos = bar.Tempos.Select(mark => mark with { Tempo = mark.Tempo with { PerMinute = mark.Tempo.PerMinute * speed } }).ToValueList(),
        }).ToValueList(),
    };
}
