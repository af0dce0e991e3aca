using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts.Shaping;

namespace Fretlore.Engraving.Fonts;

/// <summary>The music font and the text faces, each opened when it is first asked for.</summary>
/// <remarks>Made once and passed on; threads may share it. It opens no file.</remarks>
public sealed class FontLibrary
{
    private const string SerifCopyright = "© 2014-2021 Adobe Systems Incorporated";
    private const string SansCopyright = "© 2010-2023 Adobe";

    private readonly Lazy<IMusicFont> music = new(() => MusicFontMetadata.Read(FontFiles.Read(FontFiles.MusicMetadata)));
    private readonly Lazy<FontSource> musicSource = new(OpenMusic);
    private readonly Lazy<FontSource>[] faces = [.. Enum.GetValues<Face>().Select(face => new Lazy<FontSource>(() => Open(face)))];
    private readonly TextShaper shaper;

    /// <param name="more">
    /// Fonts to look through for a character that ours and the system's lack, best first; null for none. It is asked at the first such
    /// character and only as far as needed; a stream that is no font is passed over. On Linux this is the only way to fonts of the system.
    /// </param>
    public FontLibrary(IEnumerable<Stream>? more = null)
    {
        shaper = new TextShaper(SourceOf, () => MusicSource, new SystemFonts(more ?? []));
        Texts = new TextMetrics(shaper, SourceOf);
        Outlines = new GlyphOutlines(() => MusicSource);
    }

    /// <summary>Measures of the music font.</summary>
    public IMusicFont Music => music.Value;

    /// <summary>Measures of the text faces.</summary>
    public ITextMetrics Texts { get; }

    /// <summary>The music font's file.</summary>
    internal FontSource MusicSource => musicSource.Value;

    /// <summary>What sets lines of text, with the same widths that <see cref="Texts"/> gives.</summary>
    internal TextShaper Shaper => shaper;

    /// <summary>Outlines of the music glyphs.</summary>
    internal GlyphOutlines Outlines { get; }

    /// <summary>The font file of a face.</summary>
    internal FontSource SourceOf(Face face) => faces[(int)face].Value;

    private static FontSource Open(Face face)
    {
        var (family, style, copyright) = face switch
        {
            Face.Serif => ("Fretlore Serif", "Regular", SerifCopyright),
            Face.SerifItalic => ("Fretlore Serif", "Italic", SerifCopyright),
            Face.SerifBold => ("Fretlore Serif", "Bold", SerifCopyright),
            Face.Sans => ("Fretlore Sans", "Regular", SansCopyright),
            Face.SansBold => ("Fretlore Sans", "SemiBold", SansCopyright),
            _ => throw new ArgumentOutOfRangeException(nameof(face), face, "No such face."),
        };
        return new FontSource(family, style, FontFiles.Read(FontFiles.Of(face))) { Copyright = copyright };
    }

    private static FontSource OpenMusic() =>
        new("Fretlore Music", "Regular", FontFiles.Read(FontFiles.Music)) { Copyright = "© 2019 Steinberg Media Technologies GmbH" };
}
