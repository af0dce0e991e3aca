using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Layout.Model;
using Fretlore.Music;

namespace Fretlore.Engraving.Layout.Lettering;

/// <summary>Words that stand where the tempo changes, such as "Slower": set on one line with it, before it.</summary>
/// <param name="Text">As written.</param>
/// <param name="Width">How wide they are.</param>
internal readonly record struct TempoWords(string Text, double Width)
{
    // Longer ones have a line of their own.
    private const double Widest = 24;

    /// <summary>Those of a part where a tempo begins; null where there are none, or too many.</summary>
    public static TempoWords? At(Ink ink, MeasurePart part, Beats time)
    {
        foreach (var voice in part.Voices)
        {
            foreach (var slot in voice.Slots)
            {
                if (slot.Event.Start == time && slot.Event.Words is { Length: > 0 } words) return Of(ink, words);
            }
        }
        return null;
    }

    private static TempoWords? Of(Ink ink, string words)
    {
        var width = ink.TextWidth(words, Face.SerifItalic, HouseStyle.WordSize);
        return width > Widest ? null : new TempoWords(words, width);
    }
}
