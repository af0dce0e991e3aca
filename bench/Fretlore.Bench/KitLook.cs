using System.Diagnostics;
using System.Globalization;
using Fretlore.Lesson.Kit;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Bench;

/// <summary>How long a kit of a 120-bar song takes with its sound, and how long it takes to be made again after one bar has changed: the same bytes as made anew.</summary>
internal static class KitLook
{
    private const int Bars = 120;

    public static int Print(TextWriter output)
    {
        var sheet = GeneratedSong.Sheet(Bars);
        // Once to warm up.
        Make(sheet, sound: false, null);
        using var cache = new KitCache();
        output.WriteLine($"{Bars} bars, 2 parts");
        var whole = Say("whole kit", Make(sheet, sound: true, cache), 1);
        Say("after a remark", Make(sheet + "\n-- A remark.\n", sound: true, cache), whole);
        // Each from the sheet as it was, so that what the first left is not there for the next.
        Change("one bar heard once", WithOneFret("riff l1\n", sheet, "v |"));
        Change("a bar heard twice", WithOneFret("riff r0\n", sheet, "|"));
        // In the first section that has them: all others have the same bar.
        var harmonics = sheet.IndexOf("@2 12* |", StringComparison.Ordinal);
        Change("a note more in one bar", sheet.Insert(harmonics + "@2 ".Length, "Q 12* "));
        return 0;

        void Change(string what, string changed)
        {
            Make(sheet, sound: true, cache);
            var again = Make(changed, sound: true, cache);
            Say(what, again, whole);
            var isSame = again.Kit.Files.Select(file => file.Sha256).SequenceEqual(Make(changed, sound: true, null).Kit.Files.Select(file => file.Sha256));
            output.WriteLine($"  {(isSame ? "the same bytes as made anew" : "OTHER BYTES than made anew")}");
        }

        double Say(string what, (LessonKit Kit, TimeSpan Wall, TimeSpan Processor) made, double against)
        {
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{what,-24} {made.Wall.TotalSeconds,7:0.00} s, {made.Processor.TotalSeconds,7:0.00} s of processor{(against == 1 ? "" : $", {made.Wall.TotalSeconds / against:0.000} of the whole")}"));
            return made.Wall.TotalSeconds;
        }
    }

    // The last fret before a sign in a riff.
    private static string WithOneFret(string riff, string sheet, string before)
    {
        var digit = sheet.IndexOf(before, sheet.IndexOf(riff, StringComparison.Ordinal) + riff.Length, StringComparison.Ordinal);
        while (!char.IsAsciiDigit(sheet[digit])) digit--;
        return sheet[..digit] + (sheet[digit] == '5' ? '7' : '5') + sheet[(digit + 1)..];
    }

    private static (LessonKit Kit, TimeSpan Wall, TimeSpan Processor) Make(string sheet, bool sound, KitCache? cache)
    {
        using var process = Process.GetCurrentProcess();
        var (watch, before) = (Stopwatch.StartNew(), process.TotalProcessorTime);
        var song = SongWorkspace.Open(new SourceText(sheet, "bench.lore"));
        if (song.MakeKit(new KitOptions { SoundRoom = sound ? Room : null }, cache: cache) is not KitResult.Made made) throw new InvalidOperationException("The bench's song makes no kit.");
        process.Refresh();
        return (made.Kit, watch.Elapsed, process.TotalProcessorTime - before);
    }

    private static MemoryStream Room() => new();
}
