using System.Diagnostics;
using System.Globalization;
using Fretlore.Engraving.Fonts;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Bench;

/// <summary>Medians in a few seconds: coarser than the benchmarks proper, good enough to see a change for the worse.</summary>
internal static class QuickLook
{
    private const int Short = 120;
    private const int Long = 1200;

    public static int Print(TextWriter output)
    {
        var (shortSheet, longSheet) = (GeneratedSong.Sheet(Short), GeneratedSong.Sheet(Long));
        foreach (var (bars, sheet) in (ReadOnlySpan<(int, string)>)[(Short, shortSheet), (Long, longSheet)])
        {
            var findings = SongWorkspace.Open(new SourceText(sheet, "bench.lore")).Findings;
            foreach (var finding in findings) output.WriteLine($"{finding.Line}:{finding.Column} {finding.Code} {finding.Message}");
            if (!findings.IsEmpty) return 1;
            output.WriteLine($"{bars} bars, 2 parts: {sheet.Length} characters");
        }

        var fonts = new FontLibrary();
        var ways = new (string Name, Func<string, object> Way, string Wanted)[]
        {
            ("text to tree", Stages.TextToTree, ""),
            ("text to bound song", Stages.TextToSong, "under 10 ms"),
            ("text to reading", Stages.TextToReading, ""),
            ("text to all page SVGs", sheet => Stages.TextToPictures(sheet, fonts), "under 80 ms"),
            ("text to kit in memory", Stages.TextToKit, "under 2,000 ms"),
        };
        output.WriteLine();
        output.WriteLine(Row("way", "120 bars", "1,200 bars", "ratio", "wanted of 120 bars"));
        foreach (var (name, way, wanted) in ways)
        {
            var (few, many) = (Median(way, shortSheet, 31), Median(way, longSheet, 7));
            output.WriteLine(Row(name, Milliseconds(few), Milliseconds(many), (many / few).ToString("0.0", CultureInfo.InvariantCulture), wanted));
        }
        output.WriteLine("Medians of 31 and 7 runs after warming up. The ratio may be 11 at most.");
        return 0;
    }

    private static double Median(Func<string, object> way, string sheet, int runs)
    {
        // Until the just-in-time compiler has had its second look at what runs often.
        var warm = Stopwatch.StartNew();
        do way(sheet);
        while (warm.Elapsed < TimeSpan.FromSeconds(1.5));

        var times = new double[runs];
        for (var run = 0; run < runs; run++)
        {
            var watch = Stopwatch.StartNew();
            way(sheet);
            times[run] = watch.Elapsed.TotalMilliseconds;
        }
        Array.Sort(times);
        return times[runs / 2];
    }

    private static string Milliseconds(double value) => value.ToString(value < 10 ? "0.00" : "0.0", CultureInfo.InvariantCulture) + " ms";

    private static string Row(string name, string few, string many, string ratio, string wanted) =>
        $"{name,-24}{few,12}{many,14}{ratio,8}  {wanted}".TrimEnd();
}
