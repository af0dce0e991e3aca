using System.Collections.Immutable;

namespace Fretlore.Sound.Output;

/// <summary>Every part alone once more, in mono and in short pieces: to be carried inside a web page, where a piece can play before the rest is read.</summary>
/// <remarks>Where a part stands between left and right is for the page to say. The parts together sound as they are mixed.</remarks>
/// <param name="mostBytes">What all of them may take; a very long song with many parts can take more, for it must still be heard.</param>
public sealed class StemPieces(long mostBytes)
{
    /// <summary>Seconds of every piece but the last.</summary>
    public const int PieceSeconds = 10;

    private const int MostBits = 64_000;
    private const int LeastBits = 20_000;
    private const int PieceLength = PieceSeconds * SampleRate.Hertz;

    private ImmutableArray<byte>[][] made = [];

    /// <summary>For each part its pieces, each an Opus file of its own; empty until they are written.</summary>
    public ImmutableArray<ImmutableArray<ImmutableArray<byte>>> Parts => [.. made.Select(pieces => ImmutableArray.Create(pieces))];

    internal void Begin(int parts) => made = new ImmutableArray<byte>[parts][];

    internal void Write(int part, FrameStore store, long length, CancellationToken cancel)
    {
        var sound = Mono(store, checked((int)length));
        var bits = (int)Math.Clamp(mostBytes * 8.0 * SampleRate.Hertz / length / made.Length, LeastBits, MostBits);
        var pieces = new ImmutableArray<byte>[(sound.Length + PieceLength - 1) / PieceLength];
        for (var i = 0; i < pieces.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            pieces[i] = StemPiece.Encode(sound, i * PieceLength, Math.Min((i + 1) * PieceLength, sound.Length), bits);
        }
        made[part] = pieces;
    }

    private static float[] Mono(FrameStore store, int length)
    {
        var sound = new float[length];
        var frames = new float[2 * FrameStore.BlockLength];
        store.GoTo(0);
        for (var at = 0; at < length;)
        {
            var read = Math.Min(store.Read(frames), length - at);
            if (read == 0) break;
            for (var i = 0; i < read; i++) sound[at + i] = (frames[2 * i] + frames[2 * i + 1]) / 2;
            at += read;
        }
        return sound;
    }
}
