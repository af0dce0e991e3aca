using Fretlore.Music;

namespace Fretlore.Reading.Chords;

/// <summary>The notes of a key as pitch classes.</summary>
internal static class KeyNotes
{
    private static readonly PitchClassSet FromFToB = PitchClassSet.Of(0, 2, 4, 5, 7, 9, 11);

    internal static PitchClassSet Of(Key key) => FromFToB.Up(NoteName.Wrap(key.Signature * 7, 12));
}
