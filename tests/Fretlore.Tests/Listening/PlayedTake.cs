using Fretlore.Listening.Takes;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;

namespace Fretlore.Tests.Listening;

/// <summary>A take as somebody plays it: at a tempo that drifts, through some rig, with a silence before it and hiss all through.</summary>
/// <param name="Take">What is heard.</param>
/// <param name="BarStarts">When each bar begins in it, in seconds.</param>
internal sealed record PlayedTake(Take Take, double[] BarStarts)
{
    private const double Drift = 0.08; // Of the tempo from one bar to the next, at most half of it either way.

    /// <param name="song">What is played.</param>
    /// <param name="seed">For the player's moods.</param>
    /// <param name="tempo">Share of the sheet's.</param>
    /// <param name="silence">Seconds before the first bar.</param>
    /// <param name="rig">What all parts are heard through; null for their own.</param>
    /// <param name="countIn">Whether clicks count a bar in.</param>
    public static PlayedTake Of(Song song, int seed, decimal tempo = 1, double silence = 1.37, string? rig = null, bool countIn = false)
    {
        var moods = new Random(seed);
        var played = song with { Bars = Drifting(song.Bars, moods, tempo) };
        if (rig is not null) played = played with { Parts = [.. played.Parts.Select(part => part with { Sound = rig })] };
        var mix = Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(played, new SoundRequest { CountIn = countIn })).Mix;
        var counted = countIn ? mix.Seconds - Assert.IsType<SoundResult.Ready>(SongMixer.Prepare(played, new SoundRequest())).Mix.Seconds : 0;
        using var scratch = new MemoryStream();
        using var wave = new MemoryStream();
        SoundFile.Write(mix, scratch, wave, SoundFormat.Wave16, cancel: TestContext.Current.CancellationToken);
        wave.Position = 0;
        var sound = Assert.IsType<TakeResult.Read>(TakeReader.Read(wave, TestContext.Current.CancellationToken)).Take.Samples;
        var before = (int)(silence * Take.Hertz);
        var samples = new float[before + sound.Length];
        sound.Span.CopyTo(samples.AsSpan(before));
        for (var i = 0; i < samples.Length; i++) samples[i] += (float)((moods.NextDouble() - 0.5) * 0.006);
        return new PlayedTake(new Take(samples), [.. Performer.Play(played).Bars.Select(bar => bar.StartSeconds + counted + before / (double)Take.Hertz)]);
    }

    /// <summary>The take from a time on.</summary>
    public PlayedTake From(double seconds) => new(new Take(Take.Samples[(int)(seconds * Take.Hertz)..]), [.. BarStarts.Select(at => at - seconds)]);

    /// <summary>The take up to a time.</summary>
    public PlayedTake To(double seconds) => this with { Take = new Take(Take.Samples[..(int)(seconds * Take.Hertz)]) };

    /// <summary>The take with a stop before a bar, while what sounded dies away.</summary>
    public PlayedTake WithStopBefore(int bar, double seconds)
    {
        var at = (int)((BarStarts[bar] - 0.02) * Take.Hertz);
        var samples = new float[Take.Samples.Length + (int)(seconds * Take.Hertz)];
        Take.Samples.Span[..at].CopyTo(samples);
        Take.Samples.Span[at..].CopyTo(samples.AsSpan(at + (int)(seconds * Take.Hertz)));
        return new PlayedTake(new Take(samples), [.. BarStarts.Select((start, i) => i < bar ? start : start + seconds)]);
    }

    private static ValueList<Bar> Drifting(ValueList<Bar> bars, Random moods, decimal share)
    {
        var now = Tempo.Default;
        var drift = 1.0;
        return bars.Select(bar =>
        {
            foreach (var mark in bar.Tempos.Where(mark => mark.At.IsZero)) now = mark.Tempo;
            drift = Math.Clamp(drift * (1 + (moods.NextDouble() - 0.5) * Drift), 0.85, 1.15);
            var mood = new TempoMark(Beats.Zero, now with { PerMinute = Math.Round(now.PerMinute * share * (decimal)drift, 2) });
            return bar with { Tempos = [mood, .. bar.Tempos.Where(mark => !mark.At.IsZero)] };
        }).ToValueList();
    }
}
