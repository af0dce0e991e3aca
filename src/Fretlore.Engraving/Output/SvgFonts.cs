using System.Text;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Fonts.Subset;

namespace Fretlore.Engraving.Output;

/// <summary>The style sheet of a page: its text fonts, cut to what the whole document uses, inside the page itself.</summary>
internal static class SvgFonts
{
    public static string StyleSheet(FontUse use, FontLibrary fonts)
    {
        var css = new StringBuilder("text{font-kerning:normal;font-variant-ligatures:none}");
        foreach (var face in Enum.GetValues<Face>())
        {
            var source = fonts.SourceOf(face);
            var generic = face is Face.Sans or Face.SansBold ? "sans-serif" : "serif";
            css.Append($".{ClassOf(face)}{{font-family:\"{source.Family}\",\"Fretlore Music\",\"Fretlore Sans\",{generic};{Descriptors(source.Style)}}}");
        }

        foreach (var font in use.Fonts)
            if (font.Source.IsOurs) Embed(css, font);
        return css.ToString();
    }

    public static string ClassOf(Face face) => face switch
    {
        Face.Serif => "s",
        Face.SerifItalic => "i",
        Face.SerifBold => "b",
        Face.Sans => "n",
        Face.SansBold => "m",
        _ => throw new ArgumentOutOfRangeException(nameof(face), face, "No such face."),
    };

    private static void Embed(StringBuilder css, GlyphUse font)
    {
        var source = font.Source;
        var postScript = $"{source.Family.Replace(" ", "", StringComparison.Ordinal)}-{source.Style}";
        var subset = FontSubsetter.Cut(source, font.Glyphs, font.Characters, postScript, shapedByReader: true)
            ?? throw new InvalidOperationException($"{source.Family} {source.Style} cannot be cut.");
        css.Append($"@font-face{{font-family:\"{source.Family}\";{Descriptors(source.Style)};src:url(data:font/ttf;base64,")
            .Append(Convert.ToBase64String(subset.Bytes)).Append(")}");
    }

    private static string Descriptors(string style) => style switch
    {
        "Italic" => "font-style:italic;font-weight:400",
        "Bold" => "font-style:normal;font-weight:700",
        "SemiBold" => "font-style:normal;font-weight:600",
        _ => "font-style:normal;font-weight:400",
    };
}
