using Fretlore.Exchange.TextTab.Reading;
using Fretlore.Score;

namespace Fretlore.Exchange.Midi.Reading;

/// <summary>A feel stated in words, from its place on: what is played swung can then be written as it was.</summary>
internal static class StatedFeel
{
    /// <summary>The word before it.</summary>
    public const string Word = "Feel: ";

    public static Feel? Of(string text) => text.StartsWith(Word, StringComparison.Ordinal) ? HeaderWords.FeelOf(text[Word.Length..]) : null;
}
