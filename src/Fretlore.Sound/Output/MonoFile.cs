using System.Collections.Immutable;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Pieces;

namespace Fretlore.Sound.Output;

/// <summary>Writes a mix of one part as a mono Opus file, as loud as that part is within another mix: to be carried inside a web page and played beside it.</summary>
public static class MonoFile
{
    /// <summary>Bits a second that it takes.</summary>
    public const int BitsASecond = 48_000;

    /// <summary>Renders and writes.</summary>
    /// <param name="mix">One part; rendered once.</param>
    /// <param name="scratch">An empty stream that can be written, read and sought.</param>
    /// <param name="steps">What the other mix was turned up by: its <see cref="WrittenSound.Steps"/>.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="IOException">The stream can't be written.</exception>
    public static ImmutableArray<byte> Write(SongMix mix, Stream scratch, int steps, CancellationToken cancel = default)
    {
        var store = new FrameStore(scratch);
        SoundFile.Render(mix, store, null, cancel);
        var stored = new StoredMix([store], mix.Length, false);
        var factors = store.After(mix.Rendered, 1);
        new LevelCurve(stored, factors, new PieceMemo(false), _ => "", cancel).Set(Level.Like(steps, SoundFormat.Opus));
        using var file = new MemoryStream();
        using (var opus = new OpusOutput(file, OpusHeaders.NoTags, 1, BitsASecond, 0)) new LevelledSound(stored, factors, cancel).Play(opus.Write);
        return ImmutableArray.Create(file.ToArray());
    }
}
