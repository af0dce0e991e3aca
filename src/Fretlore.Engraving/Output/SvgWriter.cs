using System.Globalization;
using System.Text;
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
        for (var i = 0; i < pages.Length; i++) pages[i] = Page(document, i, style, glyphs);
        return new SvgPages([.. pages], new MissingCharacters([.. use.Missing]));
    }

    private static string Page(Document document, int index, string style, Dictionary<int, string> glyphs)
    {
        var page = document.Pages[index];
        var marks = new SvgMarks();
        marks.Write(page.Marks.AsSpan());
        var svg = new StringBuilder(marks.Length + style.Length + 8192);
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"").Number(page.Width * page.StaffSpace).Append("mm\" height=\"")
            .Number(page.Height * page.StaffSpace).Append("mm\" viewBox=\"0 0 ").Number(page.Width).Append(' ').Number(page.Height)
            .Append("\" role=\"graphics-document document\">\n<title>").Escaped(document.Title);
        if (document.Pages.Count > 1) svg.Append(CultureInfo.InvariantCulture, $", page {index + 1} of {document.Pages.Count}");
        svg.Append("</title>\n<desc>").Escaped(document.Subject).Append("</desc>\n<style>").Append(style).Append("</style>\n<defs>\n");
        foreach (var codePoint in marks.Glyphs)
            svg.Append("<path id=\"").Append(SvgMarks.IdOf(codePoint)).Append("\" d=\"").Append(glyphs[codePoint]).Append("\"/>\n");
        svg.Append("</defs>\n<rect width=\"").Number(page.Width).Append("\" height=\"").Number(page.Height).Append("\" fill=\"#fff\"/>\n");
        marks.CopyTo(svg);
        return svg.Append("</svg>\n").ToString();
    }
}
