using System.Globalization;
using System.Net;
using System.Text;

namespace Fretlore.Lesson.Diagrams;

/// <summary>Draws part of a neck as a small SVG within a page: it takes the page's font and colour.</summary>
/// <remarks>The nut is on the left and string 1 on top, as a player looking down sees it turned towards a pupil, and as tablature is read.</remarks>
internal static class NeckSvg
{
    private const double FretPitch = 34, StringPitch = 22, Head = 30, Top = 14, Radius = 9.5;

    public static string Of(NeckBox box)
    {
        var svg = new StringBuilder();
        double width = Head + box.Frets * FretPitch + 12, height = Top + (box.StringCount - 1) * StringPitch + 34;
        svg.Append(CultureInfo.InvariantCulture, $"<svg class=\"neck\" viewBox=\"0 0 {width:0.##} {height:0.##}\" role=\"img\"><title>{WebUtility.HtmlEncode(Words(box))}</title>");
        var bottom = Top + (box.StringCount - 1) * StringPitch;
        for (var s = 0; s < box.StringCount; s++) Line(svg, Head, Top + s * StringPitch, Head + box.Frets * FretPitch, Top + s * StringPitch, 1.5);
        for (var f = 0; f <= box.Frets; f++) Line(svg, Head + f * FretPitch, Top, Head + f * FretPitch, bottom, f == 0 && box.First == 1 ? 5 : 1.5);
        if (box.First > 1) Text(svg, Head + FretPitch / 2, bottom + 26, 16, box.First.ToString(CultureInfo.InvariantCulture));
        if (box.Bar is var (low, high, at)) Line(svg, Head + (at - box.First + 0.5) * FretPitch, Top + (high - 1.35) * StringPitch, Head + (at - box.First + 0.5) * FretPitch, Top + (low - 0.65) * StringPitch, 8);
        foreach (var dot in box.Dots)
        {
            var y = Top + (dot.String.Value - 1) * StringPitch;
            if (dot.Fret.IsOpen)
            {
                svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{Head - 14}\" cy=\"{y}\" r=\"6\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\"/>");
                continue;
            }
            var x = Head + (dot.Fret.Number - box.First + 0.5) * FretPitch;
            if (dot.IsRoot) svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{x - Radius}\" y=\"{y - Radius}\" width=\"{2 * Radius}\" height=\"{2 * Radius}\" fill=\"currentColor\"/>");
            else svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{x}\" cy=\"{y}\" r=\"{Radius}\" fill=\"currentColor\"/>");
            if (dot.Label.Length > 0) svg.Append(CultureInfo.InvariantCulture, $"<text class=\"on\" x=\"{x}\" y=\"{y + 4.5}\" font-size=\"13\" text-anchor=\"middle\">{WebUtility.HtmlEncode(dot.Label)}</text>");
        }
        foreach (var muted in box.Muted)
        {
            var y = Top + (muted.Value - 1) * StringPitch;
            Line(svg, Head - 19, y - 5, Head - 9, y + 5, 2);
            Line(svg, Head - 19, y + 5, Head - 9, y - 5, 2);
        }
        return svg.Append("</svg>").ToString();
    }

    /// <summary>The picture in words, low string first: "ring-a: open, open, 7, 5, not sounded".</summary>
    internal static string Words(NeckBox box)
    {
        var strings = Enumerable.Range(1, box.StringCount).Reverse().Select(number =>
        {
            var frets = box.Dots.Where(d => d.String.Value == number).Select(d => d.Fret.IsOpen ? "open" : "fret " + d.Fret).ToArray();
            return frets.Length > 0 ? $"string {number} {string.Join(" and ", frets)}" : null;
        });
        return $"{box.Title}: {string.Join(", ", strings.OfType<string>())}{(box.Capo.IsPartial ? "; " + box.Capo.Words : "")}";
    }

    private static void Line(StringBuilder svg, double x1, double y1, double x2, double y2, double width) => svg.Append(
        CultureInfo.InvariantCulture, $"<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\" stroke=\"currentColor\" stroke-width=\"{width}\"/>");

    private static void Text(StringBuilder svg, double x, double y, double size, string text) => svg.Append(
        CultureInfo.InvariantCulture, $"<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\" text-anchor=\"middle\" fill=\"currentColor\">{text}</text>");
}
