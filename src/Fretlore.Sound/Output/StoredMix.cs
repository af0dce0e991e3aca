using Fretlore.Sound.Loudness;

namespace Fretlore.Sound.Output;

/// <summary>A mix whose tracks are kept apart, frame by frame beside each other: heard as their sum.</summary>
/// <param name="tracks">One or more, equally long.</param>
/// <param name="isLoop">True when its end goes over into its beginning.</param>
internal sealed class StoredMix(IReadOnlyList<FrameStore> tracks, bool isLoop, CancellationToken cancel)
{
    public bool IsLoop => isLoop;

    /// <summary>Passes every frame of the sum on.</summary>
    public void Play(Action<double, double> hear) => Play(0, long.MaxValue, hear);

    /// <summary>Passes frames of the sum on.</summary>
    /// <param name="from">The first.</param>
    /// <param name="count">How many, where there are so many.</param>
    public void Play(long from, long count, Action<double, double> hear) => ForEachBlock(from, count, (sum, _, length) =>
    {
        for (var i = 0; i < length; i++) hear(sum[2 * i], sum[2 * i + 1]);
    });

    /// <summary>Passes every frame of the sum on, each with the highest sample of a track alone.</summary>
    public void Play(Action<double, double, double> hear) => ForEachBlock(0, long.MaxValue, (sum, highest, length) =>
    {
        for (var i = 0; i < length; i++) hear(sum[2 * i], sum[2 * i + 1], highest[i]);
    });

    /// <summary>Integrated loudness of the sum, in LUFS; null for silence.</summary>
    public double? Measure()
    {
        var meter = new LoudnessMeter();
        Play(meter.Hear);
        return meter.Integrated();
    }

    /// <summary>Writes the sum into another store.</summary>
    public void Sum(FrameStore into)
    {
        into.GoTo(0);
        var frames = new float[2 * FrameStore.BlockLength];
        ForEachBlock(0, long.MaxValue, (sum, _, length) =>
        {
            for (var i = 0; i < 2 * length; i++) frames[i] = (float)sum[i];
            into.Write(frames.AsSpan(0, 2 * length));
        });
    }

    /// <summary>Sets each track to its level within the mix, in place: what the limiter does to the sum at a moment it does to all of them.</summary>
    /// <remarks>So the tracks still add up to the mix, and each is as long and as loud as it is there.</remarks>
    public void Apply(Level level)
    {
        const int late = PeakLimiter.Delay;
        const int most = FrameStore.BlockLength;
        var limiter = new PeakLimiter(level.Ceiling);
        if (isLoop) Play((left, right, highest) => limiter.GainAfter(left * level.Gain, right * level.Gain, highest * level.Gain));
        // Each track's last frames before the block, which the limiter has not answered yet, the block, and what comes after the end.
        var raw = tracks.Select(_ => new float[2 * (late + most + late)]).ToArray();
        var after = tracks.Select(track => isLoop ? FirstOf(track, late) : []).ToArray();
        var isLast = false;
        for (long from = 0; !isLast; from += most)
        {
            cancel.ThrowIfCancellationRequested();
            var length = 0;
            for (var track = 0; track < tracks.Count; track++)
            {
                tracks[track].GoTo(from);
                length = tracks[track].Read(raw[track].AsSpan(2 * late, 2 * most));
                var end = raw[track].AsSpan(2 * (late + length));
                end.Clear();
                if (length < most) after[track].CopyTo(end);
            }
            isLast = length < most;
            if (isLast) length += late;
            Limit(raw, length, limiter, level.Gain);
            var skip = from == 0 ? late : 0;
            for (var track = 0; track < tracks.Count; track++)
            {
                tracks[track].GoTo(from + skip - late);
                tracks[track].Write(raw[track].AsSpan(2 * skip, 2 * Math.Max(0, length - skip)));
                raw[track].AsSpan(2 * most, 2 * late).CopyTo(raw[track]);
            }
        }
    }

    // Takes the frames after the late ones, and sets as many from the first of the late ones on.
    private static void Limit(float[][] raw, int length, PeakLimiter limiter, double gain)
    {
        for (var i = 0; i < length; i++)
        {
            var at = 2 * (PeakLimiter.Delay + i);
            double left = 0, right = 0, highest = 0;
            foreach (var frames in raw)
            {
                (left, right) = (left + frames[at], right + frames[at + 1]);
                highest = Math.Max(highest, Math.Max(Math.Abs(frames[at]), Math.Abs(frames[at + 1])));
            }
            var factor = gain * limiter.GainAfter(left * gain, right * gain, highest * gain);
            foreach (var frames in raw) (frames[2 * i], frames[2 * i + 1]) = ((float)(frames[2 * i] * factor), (float)(frames[2 * i + 1] * factor));
        }
    }

    private static float[] FirstOf(FrameStore track, int count)
    {
        var frames = new float[2 * count];
        track.GoTo(0);
        return frames[..(2 * track.Read(frames))];
    }

    private void ForEachBlock(long from, long count, Action<double[], double[], int> hear)
    {
        foreach (var track in tracks) track.GoTo(from);
        var (frames, sum, highest) = (new float[2 * FrameStore.BlockLength], new double[2 * FrameStore.BlockLength], new double[FrameStore.BlockLength]);
        while (count > 0)
        {
            cancel.ThrowIfCancellationRequested();
            var read = 0;
            Array.Clear(sum);
            Array.Clear(highest);
            foreach (var track in tracks)
            {
                read = track.Read(frames.AsSpan(0, (int)(2 * Math.Min(count, FrameStore.BlockLength))));
                for (var i = 0; i < 2 * read; i++) sum[i] += frames[i];
                for (var i = 0; i < read; i++) highest[i] = Math.Max(highest[i], Math.Max(Math.Abs(frames[2 * i]), Math.Abs(frames[2 * i + 1])));
            }
            if (read == 0) return;
            hear(sum, highest, read);
            count -= read;
        }
    }
}
