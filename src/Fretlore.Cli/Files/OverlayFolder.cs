using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Fretlore.Engraving.Fonts;
using Fretlore.Engraving.Output;
using Fretlore.Lesson.Overlays;
using Fretlore.Score;

namespace Fretlore.Cli.Files;

/// <summary>The folder that pictures to lay over a film are written to: there as a whole, or not at all.</summary>
internal sealed class OverlayFolder(string path)
{
    private const string FrameName = "frame-%06d.png";

    /// <summary>Whether nothing is there that would be lost.</summary>
    public static bool IsFree(string path) => !File.Exists(path) && (!Directory.Exists(path) || !Directory.EnumerateFileSystemEntries(path).Any());

    /// <summary>Writes every picture with its times.</summary>
    /// <returns>How many frames of moving tabs there are.</returns>
    /// <exception cref="OperationCanceledException">It was told to stop; nothing is left behind.</exception>
    public long Write(Song song, OverlayPlan plan, FilmFrame frame, int rate, PictureGround ground, Action<string> say, CancellationToken stop)
    {
        var place = Path.GetDirectoryName(path) ?? path;
        Directory.CreateDirectory(place);
        var building = Path.Combine(place, $".{Path.GetFileName(path)}.{Guid.NewGuid():N}.tmp");
        try
        {
            var fonts = new FontLibrary();
            Directory.CreateDirectory(building);
            var frames = 0L;
            foreach (var tab in plan.Tabs)
            {
                say($"{tab.Folder} ...");
                frames += Write(song, tab, frame, rate, ground, fonts, In(building, tab.Folder), stop);
            }
            WriteShapes(plan, ground, fonts, building, stop);
            if (Directory.Exists(path)) Directory.Delete(path);
            Directory.Move(building, path);
            return frames;
        }
        finally
        {
            if (Directory.Exists(building)) Directory.Delete(building, recursive: true);
        }
    }

    /// <summary>Makes a clear video of each moving tab with ffmpeg.</summary>
    /// <returns>How many; null when ffmpeg is not there or fails.</returns>
    public int? Encode(OverlayPlan plan, int rate, CancellationToken stop)
    {
        foreach (var tab in plan.Tabs)
        {
            stop.ThrowIfCancellationRequested();
            var folder = In(path, tab.Folder);
            string[] arguments =
            [
                "-v", "error", "-y", "-framerate", rate.ToString(CultureInfo.InvariantCulture), "-start_number", "0", "-i", Path.Combine(folder, FrameName),
                // The frames as they are: nothing is unpacked, so nothing is lost and it takes no time.
                "-c:v", "copy", "-map_metadata", "-1", "-fflags", "+bitexact", folder + ".mov",
            ];
            if (!Run("ffmpeg", arguments)) return null;
        }
        return plan.Tabs.Length;
    }

    private static long Write(Song song, TabToMake tab, FilmFrame frame, int rate, PictureGround ground, FontLibrary fonts, string folder, CancellationToken stop)
    {
        using var overlay = TabOverlay.Of(song, tab.Riff, tab.Play, frame, rate, fonts, ground);
        if (overlay is null) return 0;
        Directory.CreateDirectory(folder);
        Parallel.For(0L, overlay.FrameCount, new ParallelOptions { CancellationToken = stop }, number =>
        {
            using var file = new FileStream(Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"frame-{number:000000}.png")), FileMode.CreateNew, FileAccess.Write);
            overlay.Write(number, file);
        });
        var times = new StringBuilder("frame,bar,quarters\n");
        foreach (var (number, bar, at) in overlay.Onsets) times.Append(CultureInfo.InvariantCulture, $"{number},{bar},{at}\n");
        File.WriteAllText(Path.Combine(folder, "timing.csv"), times.ToString());
        return overlay.FrameCount;
    }

    private static void WriteShapes(OverlayPlan plan, PictureGround ground, FontLibrary fonts, string building, CancellationToken stop)
    {
        foreach (var step in plan.Shapes.GroupBy(shape => shape.Path[..shape.Path.IndexOf('/', StringComparison.Ordinal)]))
        {
            stop.ThrowIfCancellationRequested();
            Directory.CreateDirectory(In(building, step.Key));
            var times = new StringBuilder("file,from,to,shows\n");
            foreach (var shape in step)
            {
                using var file = new FileStream(In(building, shape.Path), FileMode.CreateNew, FileAccess.Write);
                PngWriter.Write(shape.Picture, fonts, 1, ground, file);
                times.Append(CultureInfo.InvariantCulture, $"{shape.Path[(step.Key.Length + 1)..]},{shape.From},{shape.To},\"{shape.Title}\"\n");
            }
            File.WriteAllText(Path.Combine(In(building, step.Key), "shapes.csv"), times.ToString());
        }
    }

    private static bool Run(string program, string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardInput = true, UseShellExecute = false });
            if (process is null) return false;
            process.StandardInput.Close();
            process.StandardError.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    private static string In(string folder, string inside) => Path.Combine([folder, .. inside.Split('/')]);
}
