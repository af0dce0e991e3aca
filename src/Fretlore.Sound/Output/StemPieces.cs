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

    private ImmutableArray<byte>[][] made = [];

    /// <summary>For each part its pieces, each an Opus file of its own; empty until they are written.</summary>
    public ImmutableArray<ImmutableArray<ImmutableArray<byte>>> Parts => [.. made.Select(pieces => ImmutableArray.Create(pieces))];

    /// <summary>Bits a second that each takes, of so many parts of that length.</summary>
    internal int BitsFor(int parts, long length) => (int)Math.Clamp(mostBytes * 8.0 * SampleRate.Hertz / length / parts, LeastBits, MostBits);

    internal void Begin(int parts, int pieces) => made = [.. Enumerable.Range(0, parts).Select(_ => new ImmutableArray<byte>[pieces])];

    internal void Set(int part, int piece, ImmutableArray<byte> file) => made[part][piece] = file;

    /// <summary>Writes a piece: it begins with what is before it, to be thrown away, and ends with what is after it, so that pieces join without a gap.</summary>
    internal static ImmutableArray<byte> Encode(LevelledSound sound, int piece, int bits)
    {
        var (from, length) = (piece * (long)SoundPieces.Length, SoundPieces.LengthOf(piece, sound.Length));
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
