using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts.Shaping;

namespace Fretlore.Engraving.Fonts;

/// <summary>The music font and the text faces, each opened when it is first asked for.</summary>
/// <remarks>Made once and passed on; threads may share it. It reads nothing but this assembly, and fonts of the system for characters ours lack.</remarks>
public sealed class FontLibrary
{
    private readonly Lazy<IMusicFont> music = new(() => MusicFontMetadata.Read(FontFiles.Read(FontFiles.MusicMetadata)));
    private readonly Lazy<FontSource> musicSource = new(() => new FontSource("Fretlore Music", "Regular", FontFiles.Read(FontFiles.Music)));
    private readonly Lazy<FontSource>[] faces = [.. Enum.GetValues<Face>().Select(face => new Lazy<FontSource>(() => Open(face)))];
    private readonly TextShaper shaper;

    public FontLibrary()
    {
        shaper = new TextShaper(SourceOf, () => MusicSource, new SystemFonts());
        Texts = new TextMetrics(shaper, SourceOf);
    }

    /// <summary>Measures of the music font.</summary>
    public IMusicFont Music => music.Value;

    /// <summary>Measures of the text faces.</summary>
    public ITextMetrics Texts { get; }

    /// <summary>The music font's file.</summary>
    internal FontSource MusicSource => musicSource.Value;

    /// <summary>What sets lines of text, with the same widths that <see cref="Texts"/> gives.</summary>
    internal TextShaper Shaper => shaper;

    /// <summary>The font file of a face.</summary>
    internal FontSource SourceOf(Face face) => faces[(int)face].Value;

    private static FontSource Open(Face face)
    {
        var (family, style) = face switch
        {
            Face.Serif => ("Fretlore Serif", "Regular"),
            Face.SerifItalic => ("Fretlore Serif", "Italic"),
            Face.SerifBold => ("Fretlore Serif", "Bold"),
            Face.Sans => ("Fretlore Sans", "Regular"),
            Face.SansBold => ("Fretlore Sans", "SemiBold"),
            _ => throw new ArgumentOutOfRangeException(nameof(face), face, "No such face."),
        };
        return new FontSource(family, style, FontFiles.Read(FontFiles.Of(face)));
    }
}
