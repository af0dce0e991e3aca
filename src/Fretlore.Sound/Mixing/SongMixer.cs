using System.Collections.Immutable;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Sound.Rigs;

namespace Fretlore.Sound.Mixing;

/// <summary>Makes mixes of a song: all of it, parts alone, without parts, bars, any speed.</summary>
public static class SongMixer
{
    private const double Tail = 1.5; // Seconds for the last note and the room to die away.
    private const double LongestSeconds = 3 * 60 * 60;

    public static SoundResult Prepare(Song song, SoundRequest request)
    {
        if (request.Speed is < SoundRequest.SlowestSpeed or > SoundRequest.FastestSpeed) return SoundRefusals.Speed(request.Speed);
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
        if (Stretch.Of(performed, request.FromBar, request.ToBar, request.CountIn) is not { } stretch) return SoundRefusals.Bars(song, request);
        var seconds = stretch.LeadIn + stretch.End - stretch.Start + Tail;
        if (seconds > LongestSeconds) return SoundRefusals.TooLong(seconds);

        var tracks = ImmutableArray.CreateBuilder<ITrack>();
        foreach (var i in chosen) tracks.Add(new PartTrack(performed, performed.Parts[i], rigs[i], stretch, AsideOf(song, i, rigs[i])));
        var parts = chosen.Select(i => (int?)i).ToList();
        if (request.Click || request.CountIn)
        {
            tracks.Add(ClickTrack.Of(performed, stretch, request.CountIn, request.Click));
            parts.Add(null);
        }
        return new SoundResult.Ready(new SongMix(song.Info, tracks.ToImmutable(), [.. parts], SampleRate.At(seconds)));
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
