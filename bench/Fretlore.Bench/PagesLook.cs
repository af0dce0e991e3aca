using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using Fretlore.Engraving.Drawing;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Layout;
using Fretlore.Engraving.Layout.Reuse;
using Fretlore.Engraving.Output;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.MusicXml;
using Fretlore.Reading;
using Fretlore.Score;
using Fretlore.Syntax;
using Fretlore.Workspace;
using Fretlore.Workspace.Exchange;

namespace Fretlore.Bench;

/// <summary>
/// Layout alone after an edit of one bar, and from MusicXML to pages beside the general engraving library verovio on the same file, staves of the
/// same size on the same paper, in one run. Needs Node.js and <c>npm ci</c> in <c>tests/node</c>.
/// </summary>
internal static class PagesLook
{
    private const int Runs = 31;

    public static int Print(TextWriter output)
    {
        var fonts = new FontLibrary();
        Relayout(output, fonts, 120, "", " (under 10 ms)");
        Relayout(output, fonts, 1200, " (at most 11 times that)", "");
        return Compare(output, fonts);
    }

    // The song with a bar changed: laid out from nothing, and with what the layout before the edit left.
    private static void Relayout(TextWriter output, FontLibrary fonts, int bars, string wantedOfWhole, string wanted)
    {
        var sheet = GeneratedSong.Sheet(bars);
        var open = SongWorkspace.Open(new SourceText(sheet, "bench.lore"));
        var edited = open.Song! with { Bars = [.. open.Song!.Bars.Items.Select((b, i) => i == bars / 2 ? b with { EndLine = BarLine.Double } : b)] };
        var engraver = new PageEngraver(fonts.Music, fonts.Texts);
        var left = ((EngravingResult.Pages)engraver.Engrave(open.Song!, open.Reading, new PageOptions(), earlier: EarlierLayout.Empty)).Layout;
        var (whole, wholeBest) = Measure(() => engraver.Engrave(edited, open.Reading, new PageOptions()));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{bars} bars laid out: median {whole:0.0} ms, best {wholeBest:0.0} ms{wantedOfWhole}"));
        var (median, best) = Measure(() => engraver.Engrave(edited, open.Reading, new PageOptions(), earlier: left));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{bars} bars laid out anew after an edit: median {median:0.0} ms, best {best:0.0} ms{wanted}"));
    }

    private static int Compare(TextWriter output, FontLibrary fonts)
    {
        var file = StavesAlone(SongExport.Write(SongWorkspace.Open(new SourceText(GeneratedSong.Sheet(120), "bench.lore")), ExportForm.MusicXml).Bytes);
        var options = new PageOptions { Show = Notation.Staff, ChordSymbols = false };
        Document Ours()
        {
            var song = ((ImportResult.Made)MusicXmlReader.Read(file)).Song;
            var pages = (EngravingResult.Pages)new PageEngraver(fonts.Music, fonts.Texts).Engrave(song, SongReader.Read(song), options);
            GC.KeepAlive(SvgWriter.Write(pages.Document, fonts));
            return pages.Document;
        }
        var (median, best) = Measure(Ours);
        var document = Ours();
        var last = document.Pages[^1];
        var reach = last.Marks.Items.OfType<Group>().Select(g => Lowest(g)).DefaultIfEmpty(0).Max() / last.Height;
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(path, file);
            if (Theirs(path, options) is not { } theirs)
            {
                output.WriteLine("verovio did not run: it needs Node.js and `npm ci` in tests/node.");
                return 1;
            }
            var (ourArea, theirArea) = (document.Pages.Count - 1 + reach, theirs.Pages - 1 + theirs.Reach);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"120 bars from MusicXML to SVG: ours median {median:0.0} ms, best {best:0.0} ms; verovio median {theirs.Median:0.0} ms, best {theirs.Best:0.0} ms"));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  share of its time {best / theirs.Best:0.00} (a quarter or less)"));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  pages {document.Pages.Count} and {theirs.Pages}, down to the last staff {ourArea:0.00} and {theirArea:0.00}: {ourArea / theirArea:0.00} of its area (at most 1.10)"));
            return 0;
        }
        finally
        {
            File.Delete(path);
        }
    }

    // Without the tablature staff, which is not printed but has verovio leave room for it.
    private static byte[] StavesAlone(byte[] file)
    {
        var xml = XDocument.Parse(Encoding.UTF8.GetString(file));
        xml.Descendants().Where(e => e.Name.LocalName is "staves" || (e.Name.LocalName is "clef" or "staff-details" && (string?)e.Attribute("number") == "2")).Remove();
        return Encoding.UTF8.GetBytes(xml.ToString());
    }

    private static double Lowest(Mark mark) => mark switch
    {
        Group group => group.InPlace.Items.Select(Lowest).DefaultIfEmpty(0).Max(),
        Line line when Math.Abs(line.From.Y - line.To.Y) < 0.001 && line.To.X - line.From.X > 10 => line.From.Y,
        _ => 0,
    };

    private static Outside? Theirs(string path, PageOptions options)
    {
        var paper = options.Paper;
        double[] lengths = [paper.Width, paper.Height, paper.SideMargin, paper.TopMargin, paper.BottomMargin, options.StaffSpace];
        var start = new ProcessStartInfo("node") { RedirectStandardOutput = true, WorkingDirectory = Path.Combine(Root(), "tests", "node") };
        foreach (var argument in (string[])["engrave-musicxml.mjs", path, Runs.ToString(CultureInfo.InvariantCulture), .. lengths.Select(l => l.ToString(CultureInfo.InvariantCulture))]) start.ArgumentList.Add(argument);
        using var node = Process.Start(start);
        if (node is null) return null;
        var said = node.StandardOutput.ReadToEnd();
        node.WaitForExit();
        return node.ExitCode == 0 ? JsonSerializer.Deserialize<Outside>(said, JsonSerializerOptions.Web) : null;
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Fretlore.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The checkout is not above the program.");
    }

    private static (double Median, double Best) Measure(Func<object> way)
    {
        var warm = Stopwatch.StartNew();
        do way();
        while (warm.Elapsed < TimeSpan.FromSeconds(2));
        var times = new double[Runs];
        for (var run = 0; run < Runs; run++)
        {
            GC.Collect();
            var watch = Stopwatch.StartNew();
            GC.KeepAlive(way());
            times[run] = watch.Elapsed.TotalMilliseconds;
        }
        Array.Sort(times);
        return (times[Runs / 2], times[0]);
    }

    private sealed record Outside(double Median, double Best, int Pages, double Reach);
}
