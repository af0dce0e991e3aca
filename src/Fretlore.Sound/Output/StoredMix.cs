using Fretlore.Sound.Loudness;

namespace Fretlore.Sound.Output;

/// <summary>A mix whose tracks are kept apart, frame by frame beside each other: heard as their sum.</summary>
internal sealed class StoredMix(IReadOnlyList<FrameStore> tracks, CancellationToken cancel)
{
    /// <summary>Passes every frame of the sum on, from the first.</summary>
    public void Play(Action<double, double> hear)
    {
        foreach (var track in tracks) track.GoTo(0);
        var (frames, sum) = (new float[2 * FrameStore.BlockLength], new double[2 * FrameStore.BlockLength]);
        while (ReadSum(frames, sum) is > 0 and var read)
        {
            cancel.ThrowIfCancellationRequested();
            for (var i = 0; i < read; i++) hear(sum[2 * i], sum[2 * i + 1]);
        }
    }

    /// <summary>Integrated loudness of the sum, in LUFS; null for silence.</summary>
    public double? Measure()
    {
        var meter = new LoudnessMeter();
        Play(meter.Hear);
        return meter.Integrated();
    }

    /// <summary>Sets each track to its level within the mix, in place: what the limiter does to the sum at a moment it does to all of them.</summary>
    /// <remarks>So the tracks still add up to the mix, and each is as long and as loud as it is there.</remarks>
    public void Apply(Level level)
    {
        const int late = PeakLimiter.Delay;
        const int most = FrameStore.BlockLength;
        var limiter = new PeakLimiter(level.Ceiling);
        // Each track's last frames before the block, which the limiter has not answered yet, the block, and silence at the end.
        var raw = tracks.Select(_ => new float[2 * (late + most + late)]).ToArray();
        var isLast = false;
        for (long from = 0; !isLast; from += most)
        {
            cancel.ThrowIfCancellationRequested();
            var length = 0;
            for (var track = 0; track < tracks.Count; track++)
            {
                tracks[track].GoTo(from);
                length = tracks[track].Read(raw[track].AsSpan(2 * late, 2 * most));
                raw[track].AsSpan(2 * (late + length)).Clear();
            }
            isLast = length < most;
            if (isLast) length += late;
            for (var i = 0; i < length; i++)
            {
                double left = 0, right = 0;
                foreach (var frames in raw) (left, right) = (left + frames[2 * (late + i)], right + frames[2 * (late + i) + 1]);
                var gain = level.Gain * limiter.GainAfter(left * level.Gain, right * level.Gain);
                foreach (var frames in raw) (frames[2 * i], frames[2 * i + 1]) = ((float)(frames[2 * i] * gain), (float)(frames[2 * i + 1] * gain));
            }
            var skip = from == 0 ? late : 0;
            for (var track = 0; track < tracks.Count; track++)
            {
                tracks[track].GoTo(from + skip - late);
                tracks[track].Write(raw[track].AsSpan(2 * skip, 2 * Math.Max(0, length - skip)));
                raw[track].AsSpan(2 * most, 2 * late).CopyTo(raw[track]);
            }
        }
    }

    /// <summary>Writes the sum into another store.</summary>
    public void Sum(FrameStore into)
    {
        foreach (var track in tracks) track.GoTo(0);
        into.GoTo(0);
        var (frames, sum) = (new float[2 * FrameStore.BlockLength], new double[2 * FrameStore.BlockLength]);
        while (ReadSum(frames, sum) is > 0 and var read)
        {
            cancel.ThrowIfCancellationRequested();
            for (var i = 0; i < 2 * read; i++) frames[i] = (float)sum[i];
            into.Write(frames.AsSpan(0, 2 * read));
        }
    }

    private int ReadSum(float[] frames, double[] sum)
    {
        var read = 0;
        Array.Clear(sum);
        foreach (var track in tracks)
        {
            read = track.Read(frames);
            for (var i = 0; i < 2 * read; i++) sum[i] += frames[i];
        }
        return read;
    }
}
