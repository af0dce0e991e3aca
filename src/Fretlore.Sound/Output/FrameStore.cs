using System.Runtime.InteropServices;
using Fretlore.Sound.Mixing;

namespace Fretlore.Sound.Output;

/// <summary>Frames, one sample of each side, kept in a stream until their loudness is known; so that memory does not grow with the song.</summary>
/// <param name="stream">An empty stream that can be written, read and sought.</param>
internal sealed class FrameStore(Stream stream)
{
    /// <summary>Frames that are moved at once.</summary>
    public const int BlockLength = SongMix.BlockLength;

    private const int FrameBytes = 2 * sizeof(float);

    private readonly float[] interleaved = new float[2 * BlockLength];

    /// <summary>Goes to a frame, from the first one on.</summary>
    public void GoTo(long frame) => stream.Position = frame * FrameBytes;

    /// <summary>Writes frames, <see cref="BlockLength"/> at most, where it stands.</summary>
    public void Write(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        for (var i = 0; i < left.Length; i++)
        {
            interleaved[2 * i] = (float)left[i];
            interleaved[2 * i + 1] = (float)right[i];
        }
        Write(interleaved.AsSpan(0, 2 * left.Length));
    }

    /// <summary>Writes frames, left and right in turn, where it stands.</summary>
    public void Write(ReadOnlySpan<float> frames) => stream.Write(MemoryMarshal.AsBytes(frames));

    /// <summary>Reads frames, left and right in turn, from where it stands.</summary>
    /// <returns>How many frames there were.</returns>
    public int Read(Span<float> frames) =>
        stream.ReadAtLeast(MemoryMarshal.AsBytes(frames), frames.Length * sizeof(float), throwOnEndOfStream: false) / FrameBytes;

    /// <summary>Makes a loop of what goes on past its end: its first frames are faded over from what would come next, and the rest is cut off.</summary>
    /// <param name="length">Frames of one round.</param>
    /// <param name="seam">Frames there are past it.</param>
    public void CloseLoop(long length, int seam)
    {
        var (start, next) = (new float[2 * seam], new float[2 * seam]);
        GoTo(0);
        var fade = (int)Math.Min(Read(start), length / 2);
        GoTo(length);
        fade = Math.Min(fade, Read(next));
        for (var i = 0; i < 2 * fade; i++) start[i] += (1 - (i / 2) / (float)fade) * (next[i] - start[i]);
        GoTo(0);
        Write(start.AsSpan(0, 2 * fade));
        stream.SetLength(length * FrameBytes);
    }
}
