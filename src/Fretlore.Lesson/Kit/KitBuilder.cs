using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Output;
using Fretlore.Exchange.Midi;
using Fretlore.Exchange.MusicXml;
using Fretlore.Lesson.Script;
using Fretlore.Music;
using Fretlore.Performance;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Lesson.Kit;

/// <summary>Makes a song's kit in memory: pages, MusicXML, MIDI, the script and the list of them all.</summary>
/// <remarks>The same song and options give the same bytes.</remarks>
public static class KitBuilder
{
    /// <param name="song">The song.</param>
    /// <param name="read">Reads it; asked once, as the first step.</param>
    /// <param name="options">Paper and parts.</param>
    /// <param name="begins">Told each step as it begins.</param>
    public static KitResult Build(Song song, Func<SongReading> read, KitOptions options, Action<KitStep>? begins = null)
    {
        begins?.Invoke(KitStep.Reading);
        var reading = read();

        begins?.Invoke(KitStep.Engraving);
        var fonts = new FontLibrary();
        var pages = new KitPages(song, reading, options, fonts);
        var engraved = pages.EngraveWhole();
        if (engraved is EngravingResult.Refused refused) return new KitResult.Refused(refused.Reason, refused.Remedy);
        var (document, staffSpace) = (EngravingResult.Pages)engraved;
        var onPages = options.Parts.Count == 0 ? "all parts" : string.Join(", ", options.Parts.Select(part => song.Parts[part].Title));

        begins?.Invoke(KitStep.Pictures);
        var pictures = SvgWriter.Write(document, fonts);

        begins?.Invoke(KitStep.Print);
        var files = ImmutableArray.CreateBuilder<KitFile>();
        files.Add(Pdf("pages/full.pdf", $"The pages to print and hand out: {onPages}", document, fonts));
        foreach (var (part, alone) in pages.EngraveParts()) files.Add(Pdf($"pages/part-{FileNameOf(part)}.pdf", $"{part.Title} alone, to print and play from", alone, fonts));
        if (pages.EngraveRiffs() is { } riffs) files.Add(Pdf("pages/riffs.pdf", "Every riff once with its name and where it comes, to practise from", riffs, fonts));
        for (var page = 0; page < pictures.Pages.Count; page++)
        {
            var path = string.Create(CultureInfo.InvariantCulture, $"pages/full-{page + 1:00}.svg");
            files.Add(Text(path, $"Page {page + 1} of {pictures.Pages.Count} as a picture for a web page or a film", pictures.Pages[page]));
        }

        begins?.Invoke(KitStep.MusicXml);
        files.Add(Written(
            "song.musicxml", "The song for notation programs, with strings, frets and techniques", stream => MusicXmlWriter.Write(stream, song, reading)));

        begins?.Invoke(KitStep.Midi);
        files.Add(Written(
            "song.mid", "The song as it sounds, to play along with or to load into a sequencer", stream => MidiWriter.Write(stream, Performer.Play(song))));

        begins?.Invoke(KitStep.Script);
        files.Add(Text("script.md", "What to say while filming: the running order and a call-out for every riff", ScriptWriter.Write(song, reading)));

        files.Add(List(song, options, files).ToFile());
        return new KitResult.Made(new LessonKit(new ValueList<KitFile>(files.DrainToImmutable())), [.. Cautions(pictures, pages.Whole, staffSpace)]);
    }

    private static KitList List(Song song, KitOptions options, IEnumerable<KitFile> files)
    {
        var parts = song.Parts.Items.Where((_, index) => options.Parts.Count == 0 || options.Parts.Contains(index)).Select(part => part.Name);
        var entries = files.Select(file => new KitListEntry(file.Path, file.Purpose, file.Bytes.Length, file.Sha256));
        var version = typeof(KitList).Assembly.GetName().Version!.ToString(3);
        return new KitList(version, song.Info.Title, song.Info.Artist, options.Paper.Name, [.. parts], [.. entries]);
    }

    // Part names are short words of the sheet; what a file system might not take becomes a hyphen.
    private static string FileNameOf(Part part) => string.Concat(part.Name.Select(c => char.IsAsciiLetterOrDigit(c) || c == '_' ? char.ToLowerInvariant(c) : '-'));

    private static KitFile Pdf(string path, string purpose, Document document, FontLibrary fonts) =>
        Written(path, purpose, stream => PdfWriter.Write(document, fonts, stream));

    // Pages may be set a little smaller to save one; that is no news.
    private const double SmallerIsSaid = 0.89;

    private static IEnumerable<string> Cautions(SvgPages pictures, PageOptions asked, double staffSpace)
    {
        if (staffSpace < asked.StaffSpace * SmallerIsSaid)
        {
            var percent = (100 * staffSpace / asked.StaffSpace).ToString("0", CultureInfo.InvariantCulture);
            yield return $"The pages are set at {percent} % of the usual size so that everything fits: fewer parts on them are easier to read.";
        }
        if (pictures.Missing.Any) yield return $"Our fonts lack {pictures.Missing}: the PDF shows boxes there.";
    }

    private static KitFile Text(string path, string purpose, string text) => new(path, [.. Encoding.UTF8.GetBytes(text)], purpose);

    private static KitFile Written(string path, string purpose, Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return new KitFile(path, ImmutableArray.Create(stream.ToArray()), purpose);
    }
}
