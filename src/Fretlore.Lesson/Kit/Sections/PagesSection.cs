using System.Collections.Immutable;
using System.Globalization;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;

namespace Fretlore.Lesson.Kit.Sections;

/// <summary>The pages: the whole song, each part alone and the riffs to print, and every page as a picture.</summary>
internal sealed class PagesSection : IKitSection
{
    // Pages may be set a little smaller to save one; that is no news.
    private const double SmallerIsSaid = 0.99;

    public string Doing => "Engraving pages";

    public double Weight => 1;

    public object InputOf(KitSource source) => (source.SongAlone, source.Options);

    public SectionResult Make(KitSource source, Action<double> progress)
    {
        var (song, options, fonts) = (source.Song, source.Options, source.Fonts);
        var pages = new KitPages(source);
        var engraved = pages.EngraveWhole();
        if (engraved is EngravingResult.Refused refused) return new SectionResult.Refused(refused.Reason, refused.Remedy);
        var (document, staffSpace) = (EngravingResult.Pages)engraved;
        var onPages = options.Parts.Count == 0 ? "all parts" : string.Join(", ", options.Parts.Select(part => song.Parts[part].Title));

        progress(0.3);
        var pictures = SvgWriter.Write(document, fonts);

        progress(0.5);
        var files = ImmutableArray.CreateBuilder<KitFile>();
        files.Add(Pdf("pages/full.pdf", $"The pages to print and hand out: {onPages}", document, fonts));
        foreach (var (part, alone) in pages.EngraveParts())
        {
            files.Add(Pdf($"pages/part-{KitFile.NameOf(part)}.pdf", $"{part.Title} alone, to print and play from", alone, fonts));
        }
        if (pages.EngraveRiffs() is { } riffs) files.Add(Pdf("pages/riffs.pdf", "Every riff once with its name and where it comes, to practise from", riffs, fonts));
        for (var page = 0; page < pictures.Pages.Length; page++)
        {
            var path = string.Create(CultureInfo.InvariantCulture, $"pages/full-{page + 1:00}.svg");
            files.Add(new KitFile(path, pictures.Pages[page], $"Page {page + 1} of {pictures.Pages.Length} as a picture for a web page or a film"));
        }
        files.Add(KitFile.Written("pages/times.json", "When each bar and note of the pages sounds, for a cursor that follows the music", stream => stream.Write(PageTimes.Of(source.Played).ToJson())));
        return new SectionResult.Made(files.DrainToImmutable(), [.. Cautions(pictures, pages.Whole, staffSpace)]);
    }

    private static KitFile Pdf(string path, string purpose, Document document, FontLibrary fonts) =>
        KitFile.Written(path, purpose, stream => PdfWriter.Write(document, fonts, stream));

    private static IEnumerable<string> Cautions(SvgPages pictures, PageOptions asked, double staffSpace)
    {
        if (staffSpace < asked.StaffSpace * asked.LeastShare * SmallerIsSaid)
        {
            var percent = (100 * staffSpace / asked.StaffSpace).ToString("0", CultureInfo.InvariantCulture);
            yield return $"The pages are set at {percent} % of the usual size so that everything fits: fewer parts on them are easier to read.";
        }
        if (pictures.Missing.Any) yield return $"Our fonts lack {pictures.Missing}: the PDF shows boxes there.";
    }
}
