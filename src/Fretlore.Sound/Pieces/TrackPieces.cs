using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;

namespace Fretlore.Sound.Pieces;

/// <summary>One track of a mix, rendered piece by piece into a store. A piece that was rendered before is kept where the track remembers the same at its start and plays the same in it.</summary>
/// <param name="store">Takes the frames.</param>
/// <param name="keeps">True when pieces are kept for the next time.</param>
internal sealed class TrackPieces(FrameStore store, bool keeps)
{
    private const int HeadLength = SampleRate.Hertz / 5; // More than a codec looks ahead.
    private const int TailLength = LevelCurve.RunUp; // More than a codec looks back.

    private Piece?[] pieces = [];
    private object? make;

    public FrameStore Store => store;

    /// <summary>What all of a piece is, to be compared by value.</summary>
    public string Whole(int piece) => Of(piece)?.Whole ?? "";

    /// <summary>What its first moments are.</summary>
    public string Head(int piece) => Of(piece)?.Head ?? "";

    /// <summary>What its last moments are.</summary>
    public string Tail(int piece) => Of(piece)?.Tail ?? "";

    /// <summary>How many of a track's pieces don't play what they played the last time, of 1.</summary>
    public double ShareOf(SongMix mix, int index)
    {
        if (mix.Track(index) is not PartTrack track || !track.Make.Equals(make)) return 1;
        var count = SoundPieces.CountOf(mix.Length);
        return Enumerable.Range(0, count).Count(piece => !IsAsPlayed(track, piece, mix.Length)) / (double)count;
    }

    /// <summary>Renders what was not rendered before.</summary>
    /// <param name="mix">The mix.</param>
    /// <param name="index">Which of its tracks.</param>
    /// <param name="done">Told of every sample that there is.</param>
    /// <param name="cancel">Ends it early; what was rendered stays.</param>
    public void Render(SongMix mix, int index, Action<long> done, CancellationToken cancel)
    {
        if (!mix.IsInPieces || mix.Track(index) is not PartTrack track)
        {
            pieces = [];
            Pass(mix, index, 0, mix.RunUp + mix.Rendered, done, cancel);
            if (mix.IsLoop) store.CloseLoop(mix.Length, mix.Seam);
            return;
        }
        if (!track.Make.Equals(make)) pieces = [];
        make = track.Make;
        Array.Resize(ref pieces, SoundPieces.CountOf(mix.Length));
        TrackMemory? memory = null;
        var standsAt = 0;
        for (var i = 0; i < pieces.Length; i++)
        {
            var (from, length) = (i * (long)SoundPieces.Length, SoundPieces.LengthOf(i, mix.Length));
            var played = track.PlayedIn(from, from + length);
            if (pieces[i] is { } old && old.Length == length && Equals(old.Before, memory) && old.Played.Equals(played))
            {
                memory = old.After;
                done(length);
                continue;
            }
            pieces[i] = null;
            if (standsAt < i) track.GoTo(from, memory!);
            Pass(mix, index, from, length, done, cancel);
            standsAt = i + 1;
            if (!keeps) continue;
            var before = memory;
            memory = track.Remember();
            pieces[i] = Taken(from, length, before, played, memory);
        }
    }

    private bool IsAsPlayed(PartTrack track, int piece, long samples)
    {
        var (from, length) = (piece * (long)SoundPieces.Length, SoundPieces.LengthOf(piece, samples));
        return Of(piece) is { } old && old.Length == length && old.Played.Equals(track.PlayedIn(from, from + length));
    }

    private void Pass(SongMix mix, int index, long from, long count, Action<long> done, CancellationToken cancel)
    {
        var at = Math.Max(0, from - mix.RunUp);
        mix.RenderAlone(index, from, count, (left, right) =>
        {
            store.Write(at, left.Span, right.Span);
            at += left.Length;
            done(left.Length);
        }, cancel);
    }

    private Piece Taken(long from, int length, TrackMemory? before, object played, TrackMemory after)
    {
        var frames = new float[2 * length];
        store.Read(from, frames);
        return new Piece(
            length, before, played, after,
            HashOf(frames), HashOf(frames.AsSpan(0, 2 * Math.Min(HeadLength, length))), HashOf(frames.AsSpan(2 * Math.Max(0, length - TailLength))));
    }

    private static string HashOf(Span<float> frames) => Convert.ToHexString(SHA256.HashData(MemoryMarshal.AsBytes(frames)));

    private Piece? Of(int piece) => piece >= 0 && piece < pieces.Length ? pieces[piece] : null;

    private sealed record Piece(int Length, TrackMemory? Before, object Played, TrackMemory After, string Whole, string Head, string Tail);
}
