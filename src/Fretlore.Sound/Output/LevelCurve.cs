using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Fretlore.Sound.Loudness;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Output;

/// <summary>By how much each frame of a mix is turned up, so that all of it comes out at one loudness with its peaks held.</summary>
/// <remarks>
/// Made piece by piece, side by side: the limiter begins two seconds before a piece, when it has forgotten all but 140 dB down of what was
/// before, the meter's filters a tenth of a second before. So a piece of the curve depends on little more than its own piece of the mix.
/// </remarks>
/// <param name="mix">The mix.</param>
/// <param name="store">Takes the curve, one factor a frame.</param>
/// <param name="memo">What was made of pieces before.</param>
/// <param name="keyOf">All that a piece of the mix, with its surroundings, depends on.</param>
/// <param name="cancel">Ends the work early.</param>
internal sealed class LevelCurve(StoredMix mix, FrameStore store, PieceMemo memo, Func<int, object> keyOf, CancellationToken cancel)
{
    /// <summary>Samples the limiter hears before a piece.</summary>
    public const int RunUp = 2 * SampleRate.Hertz;

    private const int MostAttempts = 16; // Two or three mostly; more for short hits alone, from which the limiter takes most of what is added.

    private readonly int count = SoundPieces.CountOf(mix.Length);

    /// <summary>Finds the level by trying, since the limiter takes a little loudness away, and sets the curve to it.</summary>
    /// <param name="format">The kind of file it goes into.</param>
    /// <returns>The level, and the loudness it comes out at in LUFS; null for silence.</returns>
    public (Level Level, double? Loudness) Find(SoundFormat format)
    {
        if (Integrated(Measure) is not { } raw)
        {
            var silent = Level.Like(0, format);
            Set(silent);
            return (silent, null);
        }
        var level = Level.First(raw, format);
        for (var attempt = 1; ; attempt++)
        {
            var tried = level;
            var reached = Integrated(piece => memo.Once((nameof(Limit), piece, tried), keyOf(piece), () => Limit(piece, tried))) ?? SoundFile.Loudness;
            var next = level.TurnedUp(SoundFile.Loudness - reached);
            if (Math.Abs(SoundFile.Loudness - reached) <= Level.CloseEnough || next == level || attempt == MostAttempts)
            {
                Set(level);
                return (level, reached);
            }
            level = next;
        }
    }

    /// <summary>Sets the curve to a level.</summary>
    public void Set(Level level) => SideBySide.Run(count, piece =>
    {
        if (!memo.Has(("curve", piece, 0), (keyOf(piece), level))) Limit(piece, level);
    }, cancel);

    /// <summary>What a piece of the curve is, to be compared by value.</summary>
    public object Of(int piece) => memo.Get<object>(("curve", piece, 0)) ?? "";

    private double? Integrated(Func<int, ImmutableArray<double>> measure)
    {
        var steps = new ImmutableArray<double>[count];
        SideBySide.Run(count, piece => steps[piece] = measure(piece), cancel);
        return LoudnessMeter.Integrated([.. steps.SelectMany(s => s)]);
    }

    private ImmutableArray<double> Measure(int piece) => memo.Once((nameof(Measure), piece, 0), keyOf(piece), () =>
    {
        var start = piece * (long)SoundPieces.Length;
        var meter = new LoudnessMeter();
        var sum = new double[2 * FrameStore.BlockLength];
        ForEachBlock(FirstMeasured(start), start + SoundPieces.LengthOf(piece, mix.Length), (at, length) =>
        {
            mix.Read(at, sum.AsSpan(0, 2 * length));
            for (var i = 0; i < length; i++) meter.Hear(sum[2 * i], sum[2 * i + 1]);
        });
        return Kept(meter, start);
    });

    // The energies of the piece's tenths of a second at a level. The curve is written, for it is mostly the one that is wanted.
    private ImmutableArray<double> Limit(int piece, Level level)
    {
        var start = piece * (long)SoundPieces.Length;
        var factors = new float[SoundPieces.LengthOf(piece, mix.Length)];
        var (limiter, meter) = (new PeakLimiter(level.Ceiling), new LoudnessMeter());
        var (sum, highest) = (new double[2 * FrameStore.BlockLength], new double[FrameStore.BlockLength]);
        var (measured, gain) = (FirstMeasured(start), level.Gain);
        memo.Forget(("curve", piece, 0));
        ForEachBlock(mix.IsLoop ? start - RunUp : Math.Max(0, start - RunUp), start + factors.Length + PeakLimiter.Delay, (at, length) =>
        {
            mix.Read(at, sum.AsSpan(0, 2 * length), highest.AsSpan(0, length));
            for (var i = 0; i < length; i++)
            {
                var (left, right) = limiter.Next(gain * sum[2 * i], gain * sum[2 * i + 1], gain * highest[i]);
                var answered = at + i - PeakLimiter.Delay;
                if (answered >= measured) meter.Hear(left, right);
                if (answered >= start) factors[answered - start] = (float)(gain * limiter.Gain);
            }
        });
        store.Write(start, factors);
        memo.Set(("curve", piece, 0), (keyOf(piece), level), memo.Keeps ? Convert.ToHexString(SHA256.HashData(MemoryMarshal.AsBytes(factors.AsSpan()))) : "");
        return Kept(meter, start);
    }

    private void ForEachBlock(long from, long end, Action<long, int> hear)
    {
        for (var at = from; at < end; at += FrameStore.BlockLength)
        {
            cancel.ThrowIfCancellationRequested();
            hear(at, (int)Math.Min(FrameStore.BlockLength, end - at));
        }
    }

    private long FirstMeasured(long start) => mix.IsLoop ? start - LoudnessMeter.StepLength : Math.Max(0, start - LoudnessMeter.StepLength);

    // Without what was heard before the piece.
    private ImmutableArray<double> Kept(LoudnessMeter meter, long start) => FirstMeasured(start) < start ? [.. meter.Steps.Skip(1)] : [.. meter.Steps];
}
