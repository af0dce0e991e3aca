using Fretlore.Listening.Takes;

namespace Fretlore.Listening.Spectra;

/// <summary>What is heard in a take, moment by moment.</summary>
internal static class HeardMusic
{
    private const int ChromaWindow = 4096;
    private const int OnsetWindow = 2048;
    private const int Hop = Take.Hertz / MusicFrames.Rate;
    private const float Compression = 1000;

    /// <param name="take">The take.</param>
    /// <param name="cents">How far it is tuned above A4 = 440, see <see cref="TuningOf"/>.</param>
    /// <param name="cancel">Ends the work early.</param>
    public static MusicFrames Of(Take take, double cents, CancellationToken cancel)
    {
        var count = take.Samples.Length / Hop + 1;
        var (chroma, onsets) = (new float[count * MusicFrames.Classes], new float[count * MusicFrames.Classes]);
        Parallel.Invoke(
            () => Walk(take, ChromaWindow, count, cents, (f, bands, _) =>
            {
                for (var band = 0; band < bands.Length; band++) chroma[f * MusicFrames.Classes + ClassOf(band)] += bands[band];
            }, cancel),
            () => Walk(take, OnsetWindow, count, cents, (f, bands, before) =>
            {
                for (var band = 0; band < bands.Length; band++) onsets[f * MusicFrames.Classes + ClassOf(band)] += Math.Max(0, bands[band] - before[band]);
            }, cancel));
        return MusicFrames.Of(chroma, onsets);
    }

    /// <summary>How far a take is tuned above A4 = 440, in cents from -50 to 50: where its powers stand nearest to semitones.</summary>
    public static double TuningOf(Take take)
    {
        const int Step = 5;
        var spectrum = new Spectrum(take, ChromaWindow * 2);
        var total = new float[spectrum.BinCount];
        var powers = new float[spectrum.BinCount];
        for (long at = 0; at < take.Samples.Length; at += Take.Hertz / 4)
        {
            spectrum.At(at, powers);
            // Each moment counts alike, however loud.
            var sum = Math.Max(powers.Sum(), 1e-9f);
            for (var bin = 0; bin < total.Length; bin++) total[bin] += powers[bin] / sum;
        }
        var bands = new float[PitchBands.Count];
        return Enumerable.Range(-50 / Step, 100 / Step).Select(n => n * Step).MaxBy(cents =>
        {
            new PitchBands(spectrum, cents).Sort(total, bands);
            return bands.Sum(power => power * power);
        });
    }

    private static int ClassOf(int band) => (PitchBands.Lowest + band) % MusicFrames.Classes;

    // Powers as loud as they are felt: each moment's bands, and those of the moment before.
    private static void Walk(Take take, int window, int count, double cents, Action<int, float[], float[]> hear, CancellationToken cancel)
    {
        var spectrum = new Spectrum(take, window);
        var bands = new PitchBands(spectrum, cents);
        var powers = new float[spectrum.BinCount];
        var (now, before) = (new float[PitchBands.Count], new float[PitchBands.Count]);
        var loudest = LoudestOf(take, spectrum, bands);
        for (var f = 0; f < count; f++)
        {
            cancel.ThrowIfCancellationRequested();
            spectrum.At((long)f * Hop, powers);
            bands.Sort(powers, now);
            for (var band = 0; band < now.Length; band++) now[band] = MathF.Log(1 + Compression * now[band] / loudest);
            hear(f, now, before);
            (now, before) = (before, now);
        }
    }

    private static float LoudestOf(Take take, Spectrum spectrum, PitchBands bands)
    {
        var powers = new float[spectrum.BinCount];
        var sorted = new float[PitchBands.Count];
        var loudest = 1e-12f;
        for (long at = 0; at < take.Samples.Length; at += Take.Hertz / 10)
        {
            spectrum.At(at, powers);
            bands.Sort(powers, sorted);
            loudest = Math.Max(loudest, sorted.Max());
        }
        return loudest;
    }
}
