namespace Fretlore.Listening.Spectra;

/// <summary>Music as a row of moments: how strongly each pitch class sounds, and how strongly it begins.</summary>
/// <remarks>
/// Harmony and onsets are compared each on its own, as audio and scores are lined up in the literature: chroma and decaying, locally normalised chroma
/// onsets (Ewert, Müller and Grosche, "High resolution audio synchronization using chroma onset features", ICASSP 2009).
/// </remarks>
internal sealed class MusicFrames
{
    /// <summary>Moments a second.</summary>
    public const int Rate = 50;

    public const int Classes = 12;

    // Onsets are heard on for this many moments, less and less.
    private const int Decay = 10;

    // The loudest onset within this many moments to either side is 1.
    private const int Around = Rate;

    private readonly float[] chroma;
    private readonly float[] onsets;

    private MusicFrames(int count, float[] chroma, float[] onsets) => (Count, this.chroma, this.onsets) = (count, chroma, onsets);

    public int Count { get; }

    /// <param name="chroma">How strongly each class sounds, moment by moment; any scale.</param>
    /// <param name="onsets">How strongly each class begins; any scale.</param>
    public static MusicFrames Of(float[] chroma, float[] onsets)
    {
        var count = chroma.Length / Classes;
        Normalise(chroma, count);
        return new MusicFrames(count, chroma, Decaying(Local(onsets, count), count));
    }

    /// <summary>Means of so many moments each.</summary>
    public MusicFrames Coarser(int by)
    {
        var count = (Count + by - 1) / by;
        var (means, begun) = (Mean(chroma, count, by), Mean(onsets, count, by));
        Normalise(means, count);
        return new MusicFrames(count, means, begun);
    }

    /// <summary>How unlike a moment here is to one there: 0 for the same, about 2 for nothing in common.</summary>
    public float Distance(int moment, MusicFrames other, int its)
    {
        float same = 0, apart = 0;
        for (int i = 0, here = moment * Classes, there = its * Classes; i < Classes; i++, here++, there++)
        {
            same += chroma[here] * other.chroma[there];
            var difference = onsets[here] - other.onsets[there];
            apart += difference * difference;
        }
        return 1 - same + MathF.Sqrt(apart);
    }

    private static void Normalise(float[] values, int count)
    {
        for (var f = 0; f < count; f++)
        {
            var frame = values.AsSpan(f * Classes, Classes);
            var sum = 0f;
            foreach (var value in frame) sum += value * value;
            // Where nothing sounds no class is nearer than another.
            if (sum < 1e-10f) frame.Fill(1 / MathF.Sqrt(Classes));
            else for (var i = 0; i < Classes; i++) frame[i] /= MathF.Sqrt(sum);
        }
    }

    private static float[] Local(float[] onsets, int count)
    {
        var strengths = new float[count];
        for (var f = 0; f < count; f++)
        {
            var sum = 0f;
            foreach (var value in onsets.AsSpan(f * Classes, Classes)) sum += value * value;
            strengths[f] = MathF.Sqrt(sum);
        }
        var floor = strengths.Length == 0 ? 1 : Math.Max(strengths.Max() * 0.02f, 1e-9f);
        var local = new float[onsets.Length];
        for (var f = 0; f < count; f++)
        {
            var loudest = floor;
            for (var g = Math.Max(0, f - Around); g <= Math.Min(count - 1, f + Around); g++) loudest = Math.Max(loudest, strengths[g]);
            for (var i = 0; i < Classes; i++) local[f * Classes + i] = onsets[f * Classes + i] / loudest;
        }
        return local;
    }

    private static float[] Decaying(float[] onsets, int count)
    {
        var heard = new float[onsets.Length];
        for (var f = 0; f < count; f++)
        {
            for (var later = 0; later < Decay && f + later < count; later++)
            {
                var share = MathF.Sqrt(1 - later / (float)Decay);
                for (var i = 0; i < Classes; i++)
                {
                    ref var value = ref heard[(f + later) * Classes + i];
                    value = Math.Max(value, share * onsets[f * Classes + i]);
                }
            }
        }
        return heard;
    }

    private float[] Mean(float[] values, int count, int by)
    {
        var means = new float[count * Classes];
        for (var f = 0; f < Count; f++)
        {
            for (var i = 0; i < Classes; i++) means[f / by * Classes + i] += values[f * Classes + i] / by;
        }
        return means;
    }
}
