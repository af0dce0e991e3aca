using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Music;

namespace Fretlore.Engraving.Output;

/// <summary>Pages as SVG elements to stand in one HTML page together: what they share is given once.</summary>
/// <param name="Style">The style sheet, with the text fonts inside.</param>
/// <param name="Glyphs">An SVG element that is not seen and holds the music glyphs that the pages refer to.</param>
/// <param name="Pages">One SVG element a page. Ids within them are those of the document's groups, such as <c>bar-1</c> and <c>note-7</c>.</param>
public sealed record InlineSvg(string Style, string Glyphs, ValueList<string> Pages)
{
    /// <remarks>The unit is the staff space. The elements have no size of their own. The same document gives the same text.</remarks>
    public static InlineSvg Of(Document document, FontLibrary fonts)
    {
        var use = FontUse.Of(document, fonts);
        var text = new SvgText();
        text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"0\" height=\"0\" aria-hidden=\"true\" focusable=\"false\"><defs>\n"u8);
        foreach (var codePoint in use.Music)
        {
            text.Append("<path id=\"g"u8).Append(codePoint, "X4").Append("\" d=\""u8).Append(SvgPathData.Of(fonts.Outlines.Of(codePoint))).Append("\"/>\n"u8);
        }
        text.Append("</defs></svg>\n"u8);
        var glyphs = text.ToString();
        var pages = new string[document.Pages.Count];
        for (var i = 0; i < pages.Length; i++) pages[i] = Page(document, i, text);
        return new InlineSvg(SvgFonts.StyleSheet(use, fonts), glyphs, [.. pages]);
    }

    private static string Page(Document document, int index, SvgText text)
    {
        var page = document.Pages[index];
        text.Clear();
        text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 "u8).Number(page.Width).Append(' ').Number(page.Height)
            .Append("\" role=\"graphics-document document\" aria-label=\""u8).Escaped(document.Title).Append(", page "u8).Append(index + 1).Append(" of "u8)
            .Append(document.Pages.Count).Append("\">\n"u8);
        new SvgMarks(text).Write(page.Marks.AsSpan());
        return text.Append("</svg>\n"u8).ToString();
    }
}
