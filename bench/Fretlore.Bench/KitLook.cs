using System.Diagnostics;
using System.Globalization;
using Fretlore.Lesson.Kit;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Bench;

/// <summary>How long a kit of a 120-bar song takes, and how long it takes to be made again after one bar has changed.</summary>
internal static class KitLook
{
    private const int Bars = 120;

    public static int Print(TextWriter output)
    {
        var sheet = GeneratedSong.Sheet(Bars);
        // The first fret of the song's first riff.
        var at = sheet.IndexOf("riff ", StringComparison.Ordinal);
        var bar = sheet.IndexOf('|', at);
        var digit = bar;
        while (!char.IsAsciiDigit(sheet[digit])) digit--;
        var changed = sheet[..digit] + (sheet[digit] == '5' ? '7' : '5') + sheet[(digit + 1)..];
        // Once to warm up.
        Make(sheet, sound: false, null);
        var cache = new KitCache { TakesOldSound = true };
        output.WriteLine($"{Bars} bars, 2 parts");
        Say("whole kit", Make(sheet, sound: true, cache));
        Say("after one bar, sound to follow", Make(changed, sound: true, cache));
        Say("after a remark", Make(changed + "\n-- A remark.\n", sound: true, cache));
        cache.TakesOldSound = false;
        Say("the sound that followed", Make(changed, sound: true, cache));
        return 0;

        void Say(string what, (TimeSpan Wall, TimeSpan Processor) time) =>
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-32} {time.Wall.TotalSeconds,7:0.00} s, {time.Processor.TotalSeconds,7:0.00} s of processor"));
    }

    private static (TimeSpan Wall, TimeSpan Processor) Make(string sheet, bool sound, KitCache? cache)
    {
        using var process = Process.GetCurrentProcess();
        var (watch, before) = (Stopwatch.StartNew(), process.TotalProcessorTime);
        var song = SongWorkspace.Open(new SourceText(sheet, "bench.lore"));
        if (song.MakeKit(new KitOptions { SoundRoom = sound ? Room : null }, cache: cache) is not KitResult.Made) throw new InvalidOperationException("The bench's song makes no kit.");
        process.Refresh();
        return (watch.Elapsed, process.TotalProcessorTime - before);
    }

    private static MemoryStream Room() => new();
}
