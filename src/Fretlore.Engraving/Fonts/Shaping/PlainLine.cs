using System.Text;

namespace Fretlore.Engraving.Fonts.Shaping;

/// <summary>Text made fit to be drawn on one line.</summary>
internal static class PlainLine
{
    /// <summary>Puts a space for each control character and the replacement character for half a surrogate pair.</summary>
    /// <remarks>XML knows neither, and no font has a glyph for them. Text without any is returned as it came.</remarks>
    public static string Of(string text) => NeedsCare(text) ? Rebuilt(text) : text;

    private static bool NeedsCare(string text)
    {
        foreach (var character in text)
            if (character < ' ' || character is >= '\u007f' and <= '\u009f' || character >= '\ud800') return true;
        return false;
    }

    private static string Rebuilt(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            line.Append(Rune.IsControl(rune) ? new Rune(' ') : IsNonCharacter(rune) ? Rune.ReplacementChar : rune);
        return line.ToString();
    }

    private static bool IsNonCharacter(Rune rune) => (rune.Value & 0xFFFE) == 0xFFFE;
}
