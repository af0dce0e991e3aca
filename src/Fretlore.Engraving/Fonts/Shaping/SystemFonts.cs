using System.Collections.Concurrent;
using System.Text;
using Fretlore.Engraving.Drawing;
using SkiaSharp;

namespace Fretlore.Engraving.Fonts.Shaping;

/// <summary>Fonts that are not ours, asked for characters that none of ours has: the system's where the drawing library knows them, then given ones.</summary>
internal sealed class SystemFonts(IEnumerable<Stream> more)
{
    private readonly ConcurrentDictionary<(int CodePoint, bool Bold), FontSource?> byCharacter = new();
    private readonly ConcurrentDictionary<string, FontSource?> byName = new();
    private readonly Lock reading = new();
    private readonly List<FontSource> opened = [];
    private IEnumerator<Stream>? unopened;

    /// <summary>A font that has the character, or null when there is none.</summary>
    public FontSource? For(Rune rune, Face face) =>
        byCharacter.GetOrAdd((rune.Value, face is Face.SerifBold or Face.SansBold), key => OfSystem(key.CodePoint, key.Bold) ?? Given(key.CodePoint));

    private FontSource? OfSystem(int codePoint, bool bold)
    {
        using var typeface = SKFontManager.Default.MatchCharacter(null, bold ? SKFontStyle.Bold : SKFontStyle.Normal, [], codePoint);
        if (typeface is null) return null;
        var source = byName.GetOrAdd($"{typeface.FamilyName}/{typeface.FontWeight}/{typeface.FontSlant}", _ => Read(typeface));
        return source?.GlyphOf(codePoint) > 0 ? source : null;
    }

    private static FontSource? Read(SKTypeface typeface)
    {
        using var stream = typeface.OpenStream(out var index);
        if (stream is null || !stream.HasLength) return null;
        var bytes = new byte[stream.Length];
        return stream.Read(bytes, bytes.Length) == bytes.Length ? FontSource.TryOpen(bytes, index) : null;
    }

    private FontSource? Given(int codePoint)
    {
        lock (reading)
        {
            if (opened.Find(font => font.GlyphOf(codePoint) != 0) is { } known) return known;
            unopened ??= more.GetEnumerator();
            while (unopened.MoveNext())
            {
                using var stream = unopened.Current;
                using var bytes = new MemoryStream();
                stream.CopyTo(bytes);
                if (FontSource.TryOpen(bytes.ToArray()) is not { } font) continue;
                opened.Add(font);
                if (font.GlyphOf(codePoint) != 0) return font;
            }

            return null;
        }
    }
}
