using Fretlore.Hands.Picking;
using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Music;

namespace Fretlore.Workspace.Pages;

/// <summary>Engraves a song and writes its pages in one form.</summary>
public static class SongPages
{
    private const double MillimetresPerInch = 25.4;

    // Pages may be set a little smaller to save one; that is no news.
    private const double SmallerIsSaid = 0.99;

    /// <summary>The files' bytes; the same song gives the same bytes. There must be a song.</summary>
    public static PagesResult Write(SongWorkspace workspace, PagesRequest request)
    {
        var song = workspace.Song ?? throw new InvalidOperationException("A sheet without a song has no pages.");
        if (request.Hands.PlansStrokes) song = PickingPlanner.Plan(song).WrittenInto(song);
        var fonts = new FontLibrary();
        var options = PageOptions.On(request.Paper, song, request.Show, request.Parts) with { SymbolStyle = request.SymbolStyle, Degrees = request.Degrees, Hands = request.Hands };
        switch (new PageEngraver(fonts.Music, fonts.Texts).Engrave(song, workspace.Reading, options, workspace.Hands))
        {
            case EngravingResult.Refused refused: return new PagesResult.Refused(refused.Reason, refused.Remedy);
            case EngravingResult.Pages pages when request.Page is { } page && (page < 1 || page > pages.Document.Pages.Count):
                return new PagesResult.Refused($"There is no page {page}.", $"The song has pages 1 to {pages.Document.Pages.Count}.");
            case EngravingResult.Pages pages: return Write(pages, options, request, fonts);
            default: throw new InvalidOperationException("A result is pages or refused.");
        }
    }

    private static PagesResult Write(EngravingResult.Pages engraved, PageOptions options, PagesRequest request, FontLibrary fonts)
    {
        var document = engraved.Document;
        var files = new List<(int, byte[])>();
        var cautions = new List<string>();
        if (engraved.StaffSpace < options.StaffSpace * options.LeastShare * SmallerIsSaid)
        {
            var percent = (100 * engraved.StaffSpace / options.StaffSpace).ToString("0", CultureInfo.InvariantCulture);
            cautions.Add($"The pages are set at {percent} % of the usual size so that everything fits: fewer parts on them are easier to read.");
        }
        switch (request.Form)
        {
            case PageForm.Pdf:
                using (var stream = new MemoryStream())
                {
                    var shown = request.Page is { } one ? document.OnlyPage(one - 1) : document;
                    if (PdfWriter.Write(shown, fonts, stream) is { Any: true } missing) cautions.Add($"Our fonts lack {missing}: the PDF shows boxes there.");
                    files.Add((0, stream.ToArray()));
                }
                break;
            case PageForm.Svg:
                var written = SvgWriter.Write(document, fonts).Pages;
                foreach (var page in Asked(document, request)) files.Add((page, [.. written[page - 1]]));
                break;
            default:
                foreach (var page in Asked(document, request))
                {
                    using var stream = new MemoryStream();
                    if (!PngWriter.Write(document.Pages[page - 1], fonts, PixelsPerSpace(document.Pages[page - 1], request), request.Ground, stream)) return TooLarge();
                    files.Add((page, stream.ToArray()));
                }
                break;
        }
        return new PagesResult.Made(files.ToValueList(), document.Pages.Count, cautions.ToValueList());
    }

    private static IEnumerable<int> Asked(Document document, PagesRequest request) =>
        request.Page is { } page ? [page] : Enumerable.Range(1, document.Pages.Count);

    private static double PixelsPerSpace(DrawnPage page, PagesRequest request) => request.PixelsAcross is { } pixels
        ? pixels / page.Width
        : request.DotsPerInch / MillimetresPerInch * page.StaffSpace;

    private static PagesResult.Refused TooLarge() => new(
        "A picture of that size can't be made.",
        string.Create(CultureInfo.InvariantCulture, $"Ask for one with 1 to {PngWriter.MostPixels} pixels along each side."));
}
