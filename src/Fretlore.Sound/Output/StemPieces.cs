using System.Collections.Immutable;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Output;

/// <summary>Every part alone once more, in mono and in short pieces: to be carried inside a web page, where a piece can play before the rest is read.</summary>
/// <remarks>Where a part stands between left and right is for the page to say. The parts together sound as they are mixed.</remarks>
/// <param name="mostBytes">What all of them may take; a very long song with many parts can take more, for it must still be heard.</param>
public sealed class StemPieces(long mostBytes)
{
    /// <summary>Seconds of every piece but the last.</summary>
    public const int PieceSeconds = SoundPieces.Seconds;

    private const int MostBits = 64_000;
    private const int LeastBits = 20_000;
    private const int PieceLength = PieceSeconds * SampleRate.Hertz;

    private ImmutableArray<byte>[][] made = [];

    /// <summary>For each part its pieces, each an Opus file of its own; empty until they are written.</summary>
    public ImmutableArray<ImmutableArray<ImmutableArray<byte>>> Parts => [.. made.Select(pieces => ImmutableArray.Create(pieces))];

    internal void Begin(int parts) => made = new ImmutableArray<byte>[parts][];

    internal void Write(int part, FrameStore store, long length, CancellationToken cancel)
    {
        var sound = new StoredMix([store], false, cancel);
        var bits = (int)Math.Clamp(mostBytes * 8.0 * SampleRate.Hertz / length / made.Length, LeastBits, MostBits);
        var pieces = new ImmutableArray<byte>[(length + PieceLength - 1) / PieceLength];
        for (var i = 0; i < pieces.Length; i++) pieces[i] = Encode(sound, i * (long)PieceLength, Math.Min(PieceLength, length - i * (long)PieceLength), bits);
        made[part] = pieces;
    }

    // Each piece begins with what is before it, to be thrown away, and ends with what is after it, so that pieces join without a gap.
    private static ImmutableArray<byte> Encode(StoredMix sound, long from, long length, int bits)
    {
        using var file = new MemoryStream();
        var runUp = (int)Math.Min(OpusOutput.UsualRunUp, from);
        using (var opus = new OpusOutput(file, OpusHeaders.NoTags, 1, bits, runUp))
        {
            sound.Play(from - runUp, runUp, opus.WriteBefore);
            sound.Play(from, length, opus.Write);
            sound.Play(from + length, OpusOutput.UsualRunUp, opus.WriteAfter);
        }
        return ImmutableArray.Create(file.ToArray());
    }
}
