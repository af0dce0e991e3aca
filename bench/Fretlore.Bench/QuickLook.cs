using System.Diagnostics;
using System.Globalization;
using System.Text;
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
            ("text to reading", Stages.TextToReading, "under 25 ms"),
            ("text to hand plan", Stages.TextToHands, ""),
            ("text to pages laid out", sheet => Stages.TextToPages(sheet, fonts), "40 ms over the reading"),
            ("text to all page SVGs", sheet => Stages.TextToPictures(sheet, fonts), "under 80 ms"),
            ("text to kit in memory", Stages.TextToKit, "under 2,000 ms"),
        };
        output.WriteLine();
        output.WriteLine(Row("way", "120 bars", "(best)", "1,200 bars", "(best)", "ratio of bests", "of ten at once", "wanted of 120 bars"));
        foreach (var (name, way, wanted) in ways)
        {
            var (few, many) = (Measure(() => way(shortSheet)), Measure(() => way(longSheet)));
            var ten = Measure(() => Ten(way, shortSheet));
            var (ratio, ratioOfTen) = (Ratio(many.Best, few.Best), Ratio(many.Best, ten.Best / 10));
            output.WriteLine(Row(
                name, Milliseconds(few.Median), Milliseconds(few.Best), Milliseconds(many.Median), Milliseconds(many.Best), ratio, ratioOfTen, wanted));
        }
        output.WriteLine("Medians and bests of as many runs as fit in eight seconds, 11 to 101, after warming up; on a busy machine the bests say more. The ratio may be 11 at most.");
        output.WriteLine("A song of 120 bars made again and again stays in the processor's cache, one of 1,200 does not: \"of ten at once\" is the ratio to a tenth of the time for ten");
        output.WriteLine("songs of 120 bars made and kept one after another, which use as much memory as the long one.");
        return 0;
    }

    private static object[] Ten(Func<string, object> way, string sheet)
    {
        var kept = new object[10];
        for (var i = 0; i < kept.Length; i++) kept[i] = way(sheet);
        return kept;
    }

    private static string Ratio(double more, double less) => (more / less).ToString("0.0", CultureInfo.InvariantCulture);

    private static (double Median, double Best) Measure(Func<object> way)
    {
        // Until the just-in-time compiler has had its second look at what runs often.
        var warm = Stopwatch.StartNew();
        do way();
        while (warm.Elapsed < TimeSpan.FromSeconds(1.5));

        // As many for the long sheet as for the short one where time allows: the best of few runs is worse than the best of many.
        var times = new List<double>();
        var all = Stopwatch.StartNew();
        while (times.Count < 11 || (times.Count < 101 && all.Elapsed < TimeSpan.FromSeconds(8)))
        {
            GC.Collect(); // So that a run pays for its own garbage, not for that of the runs before.
            var watch = Stopwatch.StartNew();
            GC.KeepAlive(way());
            times.Add(watch.Elapsed.TotalMilliseconds);
        }
        times.Sort();
        return (times[times.Count / 2], times[0]);
    }

    private static string Milliseconds(double value) => value.ToString(value < 10 ? "0.00" : "0.0", CultureInfo.InvariantCulture) + " ms";

    private static string Row(string name, params ReadOnlySpan<string> cells)
    {
        var row = new StringBuilder(name.PadRight(24));
        foreach (var cell in cells[..^1]) row.Append(cell.PadLeft(15));
        return row.Append("  ").Append(cells[^1]).ToString().TrimEnd();
    }
}
