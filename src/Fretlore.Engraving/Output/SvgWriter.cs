using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Music;

namespace Fretlore.Engraving.Output;

/// <summary>Pages written as SVG, and what could not be drawn of them.</summary>
/// <param name="Pages">One SVG document a page, each complete in itself.</param>
/// <param name="Missing">Characters a reader's own fonts must provide.</param>
public sealed record SvgPages(ValueList<string> Pages, MissingCharacters Missing);

/// <summary>Writes pages as SVG: music as outlines, text as text that can be searched and read aloud, its fonts inside.</summary>
/// <remarks>The unit is the staff space; width and height are given in millimetres. The same document gives the same bytes.</remarks>
public static class SvgWriter
{
    public static SvgPages Write(Document document, FontLibrary fonts)
    {
        var use = FontUse.Of(document, fonts);
        var style = SvgFonts.StyleSheet(use, fonts);
        var glyphs = use.Music.ToDictionary(code => code, code => SvgPathData.Of(fonts.Outlines.Of(code)));
        var pages = new string[document.Pages.Count];
        var (head, body) = (new SvgText(), new SvgText());
        for (var i = 0; i < pages.Length; i++) pages[i] = Page(document, i, style, glyphs, head, body);
        return new SvgPages([.. pages], new MissingCharacters([.. use.Missing]));
    }

    private static string Page(Document document, int index, string style, Dictionary<int, string> glyphs, SvgText head, SvgText body)
    {
        var page = document.Pages[index];
        head.Clear();
        body.Clear();
        // First, to know which glyphs the head must define.
        var marks = new SvgMarks(body);
        marks.Write(page.Marks.AsSpan());
        head.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").Number(page.Width * page.StaffSpace).Append("mm\" height=\"")
            .Number(page.Height * page.StaffSpace).Append("mm\" viewBox=\"0 0 ").Number(page.Width).Append(' ').Number(page.Height)
            .Append("\" role=\"graphics-document document\">\n<title>").Escaped(document.Title);
        if (document.Pages.Count > 1) head.Append(", page ").Append(index + 1).Append(" of ").Append(document.Pages.Count);
        head.Append("</title>\n<desc>").Escaped(document.Subject).Append("</desc>\n<style>").Append(style).Append("</style>\n<defs>\n");
        foreach (var codePoint in marks.Glyphs) head.Append("<path id=\"g").Append(codePoint, "X4").Append("\" d=\"").Append(glyphs[codePoint]).Append("\"/>\n");
        head.Append("</defs>\n<rect width=\"").Number(page.Width).Append("\" height=\"").Number(page.Height).Append("\" fill=\"#fff\"/>\n");
        return string.Concat(head.Written, body.Written, "</svg>\n");
    }
}
