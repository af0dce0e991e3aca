using System.Runtime.InteropServices;
using Fretlore.Sound.Mixing;

namespace Fretlore.Sound.Output;

/// <summary>Numbers kept for every moment of a sound in a stream, so that memory does not grow with the song. Several threads may read and write.</summary>
/// <param name="stream">A stream that can be written, read and sought.</param>
/// <param name="width">Numbers a moment: 2 for a sample of each side.</param>
/// <param name="origin">The byte of the stream where they begin.</param>
/// <param name="gate">Shared by all who use the stream; null where nobody else does.</param>
internal sealed class FrameStore(Stream stream, int width = 2, long origin = 0, Lock? gate = null)
{
    /// <summary>Frames that are moved at once.</summary>
    public const int BlockLength = SongMix.BlockLength;

    private readonly Lock gate = gate ?? new Lock();

    /// <summary>Another store that begins in the same stream where so many frames of this one end.</summary>
    public FrameStore After(long frames, int otherWidth) => new(stream, otherWidth, origin + frames * width * sizeof(float), gate);

    /// <summary>Writes the two sides of frames.</summary>
    public void Write(long frame, ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var interleaved = new float[2 * left.Length];
        for (var i = 0; i < left.Length; i++) (interleaved[2 * i], interleaved[2 * i + 1]) = ((float)left[i], (float)right[i]);
        Write(frame, interleaved);
    }

    /// <summary>Writes frames, their numbers in turn.</summary>
    public void Write(long frame, ReadOnlySpan<float> numbers)
    {
        lock (gate)
        {
            stream.Position = origin + frame * width * sizeof(float);
            stream.Write(MemoryMarshal.AsBytes(numbers));
        }
    }

    /// <summary>Reads frames that were written.</summary>
    public void Read(long frame, Span<float> numbers)
    {
        lock (gate)
        {
            stream.Position = origin + frame * width * sizeof(float);
            stream.ReadExactly(MemoryMarshal.AsBytes(numbers));
        }
    }

    /// <summary>Makes a loop of what goes on past its end: its first frames are faded over from what would come next.</summary>
    /// <param name="length">Frames of one round.</param>
    /// <param name="seam">Frames there are past it.</param>
    public void CloseLoop(long length, int seam)
    {
        var fade = (int)Math.Min(seam, length / 2);
        var (start, next) = (new float[width * fade], new float[width * fade]);
        Read(0, start);
        Read(length, next);
        for (var i = 0; i < start.Length; i++) start[i] += (1 - (i / width) / (float)fade) * (next[i] - start[i]);
        Write(0, start);
    }
}
