using System.Diagnostics;
using System.Globalization;
using Fretlore.Score;
using Fretlore.Sound.Mixing;
using Fretlore.Sound.Output;
using Fretlore.Syntax;
using Fretlore.Workspace;

namespace Fretlore.Bench;

/// <summary>How much faster than it is heard a band is rendered: two driven guitars, each recorded twice, and a bass.</summary>
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

    public static int Print(TextWriter output)
    {
        var open = SongWorkspace.Open(new SourceText(Band, "band.lore"));
        foreach (var finding in open.Findings) output.WriteLine($"{finding.Line}:{finding.Column} {finding.Code} {finding.Message}");
        if (open.HasErrors || open.Song is not { } song) return 1;
        Print(output, "two driven guitars and bass, mix, one core", song, mix => mix.Render((_, _) => { }, cores: 1));
        Print(output, "the same, all cores", song, mix => mix.Render((_, _) => { }));
        Print(output, "the same as a WAV file at -16 LUFS", song, mix => SoundFile.Write(mix, new MemoryStream(), new MemoryStream(), SoundFormat.Wave16));
        return 0;
    }

    private static void Print(TextWriter output, string name, Song song, Action<SongMix> render)
    {
        var (best, seconds, allocated) = (double.MaxValue, 0.0, 0L);
        for (var run = 0; run < 4; run++)
        {
            var mix = ((SoundResult.Ready)SongMixer.Prepare(song, new SoundRequest())).Mix;
            // Processor time, not the clock's: other programs on the machine don't count.
            var (start, before) = (Process.GetCurrentProcess().TotalProcessorTime, GC.GetTotalAllocatedBytes());
            render(mix);
            best = Math.Min(best, (Process.GetCurrentProcess().TotalProcessorTime - start).TotalSeconds);
            (seconds, allocated) = (mix.Seconds, GC.GetTotalAllocatedBytes() - before);
        }
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-44}{seconds,6:0.0} s in {best,6:0.000} s of processor: {seconds / best,5:0} times real time, {allocated / 1024.0 / seconds,7:0} KB a second"));
    }
}
