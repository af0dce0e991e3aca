using System.Diagnostics;
using System.Globalization;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Sound.Rigs;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Bench;

/// <summary>How much faster than it is heard a band is rendered (two driven guitars, each recorded twice, and a bass), on one core and on all, and what memory it takes.</summary>
internal static class SoundLook
{
    private const string Band = """
        title  Band
        tuning E2 A2 D3 G3 B3 E4
        tempo  Q = 140

        part left-hand  "First guitar"   sound driven
        part right-hand "Second guitar"  sound driven
        part low-end    "Bass"           sound bass
          tuning E1 A1 D2 G2

        riff main
          @654 ESS pm{ 0 0 0 0 0 0 } E [3 5 5] 0m [5 7 7] 0m |

        riff under
          @4 E 0 0 0 0 3 0 5 0 |

        section All
          left-hand  main times 16
          right-hand main times 16
          low-end    under times 16

        """;

    private const int RoundsAMinute = 35; // Bars of 4/4 at 140 quarters a minute.

    public static int Print(TextWriter output)
    {
        if (Song(output, 16) is not { } song || Song(output, RoundsAMinute) is not { } minute || Song(output, 10 * RoundsAMinute) is not { } tenMinutes) return 1;
        Print(output, "two driven guitars and bass, mix, one core", song, mix => mix.Render((_, _) => { }, cores: 1));
        Print(output, "the same, all cores", song, mix => mix.Render((_, _) => { }));
        Print(output, "the same as a WAV file at -16 LUFS", song, mix => SoundFile.Write(mix, new MemoryStream(), new MemoryStream(), SoundFormat.Wave16));
        Print(output, "the same with stems, all in Opus", song, mix => StemFiles.Write(mix, () => new MemoryStream(), new MemoryStream(), [.. mix.Parts.Select(_ => new MemoryStream())], SoundFormat.Opus));
        PrintSilence(output);
        PrintCores(output, minute);
        PrintMemory(output, "one minute", minute);
        PrintMemory(output, "ten minutes", tenMinutes);
        return 0;
    }

    private static Song? Song(TextWriter output, int rounds)
    {
        var open = SongWorkspace.Open(new SourceText(Band.Replace("times 16", "times " + rounds.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal), "band.lore"));
        foreach (var finding in open.Findings) output.WriteLine($"{finding.Line}:{finding.Column} {finding.Code} {finding.Message}");
        return open.HasErrors ? null : open.Song;
    }

    private static SongMix MixOf(Song song) => ((SoundResult.Ready)SongMixer.Prepare(song, new SoundRequest())).Mix;

    private static void Print(TextWriter output, string name, Song song, Action<SongMix> render)
    {
        var (best, clock, seconds) = (double.MaxValue, double.MaxValue, 0.0);
        for (var run = 0; run < 4; run++)
        {
            var mix = MixOf(song);
            // Processor time: other programs on the machine don't count.
            var (start, watch) = (Process.GetCurrentProcess().TotalProcessorTime, Stopwatch.StartNew());
            render(mix);
            best = Math.Min(best, (Process.GetCurrentProcess().TotalProcessorTime - start).TotalSeconds);
            (clock, seconds) = (Math.Min(clock, watch.Elapsed.TotalSeconds), mix.Seconds);
        }
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-44}{seconds,6:0.0} s in {best,6:0.000} s of processor: {seconds / best,5:0} times real time; by the clock {clock,6:0.000} s"));
    }

    // After a note there is silence that fades without an end: it must not cost more than music.
    private static void PrintSilence(TextWriter output)
    {
        foreach (var rig in RigNames.All)
        {
            double On(string music)
            {
                var open = SongWorkspace.Open(new SourceText($"title T\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 120\npart solo \"Solo\" sound {rig}\nsection All\n  solo {music}\n", "one.lore"));
                var best = double.MaxValue;
                for (var run = 0; run < 3; run++)
                {
                    var (mix, start) = (MixOf(open.Song!), Process.GetCurrentProcess().TotalProcessorTime);
                    mix.Render((_, _) => { }, cores: 1);
                    best = Math.Min(best, (Process.GetCurrentProcess().TotalProcessorTime - start).TotalSeconds / mix.Seconds);
                }
                return best;
            }
            var (music, silence) = (On("times 8{ @6-1 Q [0 2 2 1 0 0] = = = | }"), On("@6-1 Q [0 2 2 1 0 0]' R H R | rest 20"));
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{rig,-10}{1000 * music,6:0.0} ms of processor for a second of chords, {1000 * silence,6:0.0} ms for one of silence after a chord"));
        }
    }

    private static void PrintCores(TextWriter output, Song song)
    {
        double On(int cores)
        {
            var best = double.MaxValue;
            for (var run = 0; run < 3; run++)
            {
                var (mix, watch) = (MixOf(song), Stopwatch.StartNew());
                mix.Render((_, _) => { }, cores);
                best = Math.Min(best, watch.Elapsed.TotalSeconds);
            }
            return best;
        }
        var (one, all) = (On(1), On(-1));
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"three parts, by the clock: {one:0.00} s on one core, {all:0.00} s on {Environment.ProcessorCount}: {one / all:0.00} times as fast"));
    }

    // What is held each time a twentieth more is done, over the song and its notes; the room for frames is on disk.
    private static void PrintMemory(TextWriter output, string name, Song song)
    {
        long most = 0;
        var shown = -1;
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var mix = MixOf(song);
        var notes = GC.GetTotalMemory(forceFullCollection: true);
        using var scratch = new FileStream(Path.GetTempFileName(), FileMode.Open, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose);
        using var target = new FileStream(Path.GetTempFileName(), FileMode.Open, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose);
        SoundFile.Write(mix, scratch, target, SoundFormat.Wave16, progress: share =>
        {
            if ((int)(20 * share) == shown) return;
            shown = (int)(20 * share);
            most = Math.Max(most, GC.GetTotalMemory(forceFullCollection: true) - notes);
        });
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"{name} as a WAV file: {most / 1024.0 / 1024:0.0} MB held at most, besides {(notes - before) / 1024.0 / 1024:0.0} MB of strings and notes"));
        GC.KeepAlive(mix);
    }
}
