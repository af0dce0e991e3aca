using Fretlore.Performance;

namespace Fretlore.Listening.Spectra;

/// <summary>What should be heard of a song, moment by moment.</summary>
internal static class WrittenMusic
{
    private const int Partials = 8;
    private const double PartialShare = 0.8;
    private const double RingSeconds = 1.2;
    private const double MutedSeconds = 0.12;

    /// <param name="song">The performance.</param>
    /// <param name="parts">Indexes of the parts that are heard.</param>
    /// <param name="timeOf">When it is played what the sheet has at a time, in seconds.</param>
    /// <param name="seconds">How long it is played.</param>
    public static MusicFrames Of(PerformedSong song, IReadOnlyCollection<int> parts, Func<double, double> timeOf, double seconds)
    {
        var count = Math.Max(0, (int)(seconds * MusicFrames.Rate)) + 1;
        var (chroma, onsets) = (new float[count * MusicFrames.Classes], new float[count * MusicFrames.Classes]);
        foreach (var note in parts.SelectMany(part => song.Parts[part].Notes)) Add(note, timeOf(note.OnsetSeconds), timeOf(note.ReleaseSeconds), chroma, onsets);
        return MusicFrames.Of(chroma, onsets);
    }

    private static void Add(PerformedNote note, double onset, double release, float[] chroma, float[] onsets)
    {
        if (note.Damping == Damping.Dead) return;
        var count = chroma.Length / MusicFrames.Classes;
        var first = (int)Math.Round(onset * MusicFrames.Rate);
        if (first < 0 || first >= count) return;
        var loudness = note.Velocity / 127.0;
        var ring = note.Damping == Damping.Palm ? MutedSeconds : RingSeconds;
        Sound(onsets, first, PitchAt(note, 0), loudness);
        var end = Math.Min(count, (int)Math.Ceiling(release * MusicFrames.Rate));
        for (var f = first; f < end; f++)
        {
            var since = (f - first) / (double)MusicFrames.Rate;
            Sound(chroma, f, PitchAt(note, since), loudness * Math.Exp(-since / ring));
        }
    }

    private static double PitchAt(PerformedNote note, double since) => note.Height.Midi + note.Pitch.CentsAt(since) / 100;

    // As far as bands are listened to: a low note is heard by its partials.
    private static void Sound(float[] values, int frame, double pitch, double loudness)
    {
        for (var partial = 1; partial <= Partials; partial++)
        {
            var heard = pitch + 12 * Math.Log2(partial);
            if (heard is < PitchBands.Lowest or > PitchBands.Highest) continue;
            var share = loudness * Math.Pow(PartialShare, partial - 1);
            var below = (int)Math.Floor(heard);
            values[frame * MusicFrames.Classes + below % MusicFrames.Classes] += (float)(share * (below + 1 - heard));
            values[frame * MusicFrames.Classes + (below + 1) % MusicFrames.Classes] += (float)(share * (heard - below));
        }
    }
}
