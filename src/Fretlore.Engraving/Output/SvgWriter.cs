using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Text;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;

namespace Fretlore.Engraving.Output;

/// <summary>Pages written as SVG, and what could not be drawn of them.</summary>
/// <param name="Pages">One SVG document a page in UTF-8, each complete in itself.</param>
/// <param name="Missing">Characters a reader's own fonts must provide.</param>
public sealed record SvgPages(ImmutableArray<ImmutableArray<byte>> Pages, MissingCharacters Missing);

/// <summary>Writes pages as SVG: music as outlines, text as text that can be searched and read aloud, its fonts inside.</summary>
/// <remarks>The unit is the staff space; width and height are given in millimetres. The same document gives the same bytes.</remarks>
public static class SvgWriter
{
    public static SvgPages Write(Document document, FontLibrary fonts)
    {
        var use = FontUse.Of(document, fonts);
        var style = Encoding.UTF8.GetBytes(SvgFonts.StyleSheet(use, fonts));
        var glyphs = use.Music.ToDictionary(code => code, code => SvgPathData.Of(fonts.Outlines.Of(code)));
        var pages = new ImmutableArray<byte>[document.Pages.Count];
        var (head, body) = (new SvgText(), new SvgText());
        for (var i = 0; i < pages.Length; i++) pages[i] = Page(document, i, style, glyphs, head, body);
        return new SvgPages(ImmutableCollectionsMarshal.AsImmutableArray(pages), new MissingCharacters([.. use.Missing]));
    }

    private static ImmutableArray<byte> Page(Document document, int index, byte[] style, Dictionary<int, string> glyphs, SvgText head, SvgText body)
    {
        var page = document.Pages[index];
        head.Clear();
        body.Clear();
        // First, to know which glyphs the head must define.
        var marks = new SvgMarks(body);
        marks.Write(page.Marks.AsSpan());
        head.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\""u8).Number(page.Width * page.StaffSpace).Append("mm\" height=\""u8)
            .Number(page.Height * page.StaffSpace).Append("mm\" viewBox=\"0 0 "u8).Number(page.Width).Append(' ').Number(page.Height)
            .Append("\" role=\"graphics-document document\">\n<title"u8);
        if (document.Language is { } language) head.Append(" xml:lang=\""u8).Escaped(language).Append('"');
        head.Append('>').Escaped(document.Title);
        if (document.Pages.Count > 1) head.Append(", page "u8).Append(index + 1).Append(" of "u8).Append(document.Pages.Count);
        head.Append("</title>\n<desc>"u8).Escaped(document.Subject).Append("</desc>\n<style>"u8).Append(style.AsSpan()).Append("</style>\n<defs>\n"u8);
        foreach (var codePoint in marks.Glyphs) head.Append("<path id=\"g"u8).Append(codePoint, "X4").Append("\" d=\""u8).Append(glyphs[codePoint]).Append("\"/>\n"u8);
        head.Append("</defs>\n<rect width=\""u8).Number(page.Width).Append("\" height=\""u8).Number(page.Height).Append("\" fill=\"#fff\"/>\n"u8);
        body.Append("</svg>\n"u8);
        var whole = new byte[head.Written.Length + body.Written.Length];
        head.Written.CopyTo(whole);
        body.Written.CopyTo(whole.AsSpan(head.Written.Length));
        return ImmutableCollectionsMarshal.AsImmutableArray(whole);
    }
}
