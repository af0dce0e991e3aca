using System.Diagnostics;
using System.Globalization;
using Fretlore.Music;
using Fretlore.Reading.Chords;
using Fretlore.Score;

namespace Fretlore.Bench;

/// <summary>How long a chord takes to be named and a bound song to be read, and whether a song ten times as long takes ten times as long.</summary>
internal static class ReadingLook
{
    private const int Short = 120;
    private const int Long = 1200;
    private const int Runs = 24;

    public static int Print(TextWriter output)
    {
        PrintChords(output);
        // Ten short songs in turn, kept, use as much memory as the long one does.
        var few = Enumerable.Range(0, Long / Short).Select(_ => Stages.Song(GeneratedSong.Sheet(Short))).ToArray();
        var many = Stages.Song(GeneratedSong.Sheet(Long));
        var (one, longOne) = (Best(() => Read(few)) / few.Length, Best(() => Read(many)));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Short} bars, 2 parts, {few[0].NoteCount} notes: read in {one:0.00} ms of processor at best (wanted: under 15)"));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Long} bars, 2 parts, {many.NoteCount} notes: {longOne:0.0} ms, {longOne / one:0.0} times as long for {many.NoteCount / (double)few[0].NoteCount:0.0} times the notes"));
        return 0;
    }

    // Every set of three to seven pitch classes over each of its notes, as six-string shapes have them.
    private static void PrintChords(TextWriter output)
    {
        var shapes = new List<Height[]>();
        for (var bits = 1; bits < 4096; bits++)
        {
            var set = new PitchClassSet(bits);
            if (set.Count is < 3 or > 7) continue;
            foreach (var bass in set) shapes.Add([new Height(36 + bass), .. ((IEnumerable<int>)[.. set]).Where(tone => tone != bass).Select(tone => new Height(48 + tone))]);
        }
        var all = Best(() =>
        {
            foreach (var shape in shapes) ChordNamer.Name(shape);
        });
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"a chord of 3 to 7 notes with its reasons, the mean of {shapes.Count}: {1000 * all / shapes.Count:0.0} µs of processor at best (wanted: under 20)"));
    }

    private static void Read(params Song[] songs)
    {
        foreach (var song in songs) GC.KeepAlive(Stages.SongToReading(song));
    }

    // Processor time, so that other programs on the machine don't count; in milliseconds.
    private static double Best(Action way)
    {
        var warm = Stopwatch.StartNew();
        do way();
        while (warm.Elapsed < TimeSpan.FromSeconds(3));
        var best = double.MaxValue;
        for (var run = 0; run < Runs; run++)
        {
            GC.Collect();
            var start = Process.GetCurrentProcess().TotalProcessorTime;
            way();
            best = Math.Min(best, (Process.GetCurrentProcess().TotalProcessorTime - start).TotalMilliseconds);
        }
        return best;
    }
}
