using System.Collections.Concurrent;
using System.Text;
using Fretlore.Engraving.Drawing;
using SkiaSharp;

namespace Fretlore.Engraving.Fonts.Shaping;

/// <summary>Fonts of the machine we run on, asked for characters that none of ours has.</summary>
internal sealed class SystemFonts
{
    private readonly ConcurrentDictionary<(int CodePoint, bool Bold), FontSource?> byCharacter = new();
    private readonly ConcurrentDictionary<string, FontSource?> byName = new();

    /// <summary>A font that has the character, or null when the machine has none.</summary>
    public FontSource? For(Rune rune, Face face)
    {
        var bold = face is Face.SerifBold or Face.SansBold;
        return byCharacter.GetOrAdd((rune.Value, bold), key => Find(key.CodePoint, key.Bold));
    }

    private FontSource? Find(int codePoint, bool bold)
    {
        using var typeface = SKFontManager.Default.MatchCharacter(null, bold ? SKFontStyle.Bold : SKFontStyle.Normal, [], codePoint);
        if (typeface is null) return null;
        var style = $"{typeface.FontWeight}-{typeface.FontSlant}";
        var source = byName.GetOrAdd($"{typeface.FamilyName}/{style}", _ => Open(typeface, style));
        return source?.GlyphOf(codePoint) > 0 ? source : null;
    }

    private static FontSource? Open(SKTypeface typeface, string style)
    {
        using var stream = typeface.OpenStream(out var index);
        if (stream is null || !stream.HasLength) return null;
        var bytes = new byte[stream.Length];
        return stream.Read(bytes, bytes.Length) == bytes.Length ? new FontSource(typeface.FamilyName, style, bytes, index) : null;
    }
}
