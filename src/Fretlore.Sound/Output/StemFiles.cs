using System.Collections.Immutable;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Output;

/// <summary>Writes a mix and each of its parts alone, all from one rendering.</summary>
/// <remarks>
/// Every stem is as long as the mix, begins with it and is as loud as in it, sample by sample: together they are the mix again, less what
/// a codec changes. Tracks are rendered side by side, and pieces of files encoded side by side, on all cores; the bytes don't depend on how many.
/// </remarks>
public static class StemFiles
{
    /// <summary>Bits a second of a stem in Opus: four minutes of two parts are under 4 MB.</summary>
    public const int StemBitsASecond = 64_000;

    /// <summary>Renders and writes.</summary>
    /// <param name="mix">The mix; rendered once.</param>
    /// <param name="room">Gives empty streams that can be written, read and sought, to work in; disposed of here, or by what they are kept in.</param>
    /// <param name="full">Takes the whole mix; an empty stream, left open.</param>
    /// <param name="stems">Takes each of <see cref="SongMix.Parts"/> alone, in their order; none to leave the stems out.</param>
    /// <param name="format">The kind of all files.</param>
    /// <param name="progress">Told the share that is done, 0 to 1; from several threads, one at a time.</param>
    /// <param name="pieces">Takes the parts once more in mono pieces; null to leave them out.</param>
    /// <param name="earlier">What the last writing left, and this one leaves; null to make everything anew and leave nothing, as is done with loops and clicks.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="IOException">A stream can't be written.</exception>
    public static WrittenSound Write(
        SongMix mix, Func<Stream> room, Stream full, IReadOnlyList<Stream> stems, SoundFormat format, Action<double>? progress = null,
        StemPieces? pieces = null, EarlierSound? earlier = null, CancellationToken cancel = default)
    {
        using var own = earlier is null || !mix.IsInPieces ? new EarlierSound(keeps: false) : null;
        var kept = own ?? earlier!;
        kept.Begin(mix.Parts.Length, room);
        var done = new SharedProgress(progress);
        var share = 0.6 / mix.Rendered / mix.Parts.Length;
        SideBySide.Run(mix.Parts.Length, track => kept.Tracks[track].Render(mix, track, samples => done.Add(share * samples), cancel), cancel);
        var stored = new StoredMix([.. kept.Tracks.Select(track => track.Store)], mix.Length, mix.IsLoop);
        var curve = new LevelCurve(stored, kept.Curve, kept.Memo, kept.KeyOf, cancel);
        var (level, loudness) = curve.Find(format);
        done.Is(0.75);
        var sound = new LevelledSound(stored, kept.Curve, cancel);
        var work = new List<Action>();
        var encoded = new List<Action>();
        for (var file = 0; file <= stems.Count; file++)
        {
            var (heard, output, bits) = file == 0 ? (sound, full, OpusOutput.UsualBitsASecond) : (sound.Only(file - 1), stems[file - 1], StemBitsASecond);
            if (format == SoundFormat.Opus && !mix.IsLoop) InPieces(heard, file, output, bits);
            else work.Add(() => SoundFile.Encode(heard, mix, output, format, bits));
        }
        if (pieces is not null) AsPieces(pieces);
        SideBySide.Run(work.Count, i =>
        {
            work[i]();
            done.Add(0.25 / work.Count);
        }, cancel);
        encoded.ForEach(write => write());
        kept.Memo.EndRound();
        done.Is(1);
        return new WrittenSound(mix.Seconds, loudness, level.Steps);

        // What a piece of a file depends on; file 0 is all tracks.
        object KeyOf(int file, int piece, int bits) =>
            (file == 0 ? kept.KeyOf(piece) : kept.KeyOf(file - 1, piece), curve.Of(piece - 1), curve.Of(piece), curve.Of(piece + 1), bits, mix.Length);

        void InPieces(LevelledSound heard, int file, Stream output, int bits)
        {
            var opus = new OpusPieces(heard, 2, bits);
            var packets = new ImmutableArray<byte[]>[opus.Count];
            for (var i = 0; i < packets.Length; i++)
            {
                var piece = i;
                work.Add(() => packets[piece] = kept.Memo.Once(("packets", piece, file), KeyOf(file, piece, bits), () => opus.Encode(piece)));
            }
            encoded.Add(() => opus.Write(output, OpusHeaders.Tags(mix), packets));
        }

        void AsPieces(StemPieces into)
        {
            var (bits, count) = (into.BitsFor(mix.Parts.Length, mix.Length), SoundPieces.CountOf(mix.Length));
            into.Begin(mix.Parts.Length, count);
            for (var i = 0; i < mix.Parts.Length * count; i++)
            {
                var (part, piece) = (i / count, i % count);
                var heard = sound.Only(part);
                work.Add(() => into.Set(part, piece, kept.Memo.Once(("mono", piece, part), KeyOf(part + 1, piece, bits), () => StemPieces.Encode(heard, piece, bits))));
            }
        }
    }

    private sealed class SharedProgress(Action<double>? tell)
    {
        private readonly Lock gate = new();
        private double share;

        public void Add(double more)
        {
            lock (gate) Is(share + more);
        }

        public void Is(double now)
        {
            lock (gate)
            {
                share = Math.Min(Math.Max(now, share), 1);
                tell?.Invoke(share);
            }
        }
    }
}
