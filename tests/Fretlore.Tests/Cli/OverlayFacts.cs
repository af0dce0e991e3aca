using Fretlore.Tests.Outside;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore overlay</c>.</summary>
public sealed class OverlayFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void Overlays_AreFramesWithTheirTimes_AndAVideoWhereFfmpegIs()
    {
        desktop.Write("song.lore", Sheets.Top.Replace("Q = 120", "Q = 240", StringComparison.Ordinal) + "riff main\n  @6 Q 0 3 5 7 |\nsection A\n  guitar main\nlesson\n  step \"Main\" teach main at 200% as headline\n");
        Assert.Equal(0, desktop.Run("overlay", "song.lore", "--fps", "24", "-o", "over"));
        // A bar of counting in and the bar twice, each half a second.
        var frames = Directory.GetFiles(desktop.PathOf("over/01-main/tab-200"), "frame-*.png");
        Assert.Equal(36, frames.Length);
        Assert.Equal("frame,bar,quarters\n12,1,0\n15,1,1\n18,1,2\n21,1,3\n24,2,4\n", desktop.Read("over/01-main/tab-200/timing.csv")[..54]);
        Assert.StartsWith("file,from,to,shows\nshape-01-main.png,0,", desktop.Read("over/01-main/shapes.csv"), StringComparison.Ordinal);
        if (!desktop.Out.Contains("clear videos", StringComparison.Ordinal)) return;
        var seen = OutsideProgram.Run("ffprobe", "-v", "error", "-count_frames", "-show_entries", "stream=nb_read_frames,r_frame_rate,pix_fmt,width,height", "-of", "csv=p=0", desktop.PathOf("over/01-main/tab-200.mov"));
        Assert.Equal("1920,1080,rgba,24/1,36", seen.Trim());
    }

    [Fact]
    public void FolderThatIsThere_IsLeftAsItIs()
    {
        desktop.Write("over/mine.txt", "mine");
        desktop.Write("song.lore", Sheets.Top + "riff main\n  @6 Q 0 3 5 7 |\nsection A\n  guitar main\n");
        Assert.Equal(2, desktop.Run("overlay", "song.lore", "-o", "over"));
        Assert.Contains("is already there and was left as it is", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(["mine.txt"], desktop.Everything("over").Keys);
    }

    [Fact]
    public void SongWithoutRiffs_HasNothingToLayOver()
    {
        desktop.Write("song.lore", Sheets.WithLine("@6 W 0 |"));
        Assert.Equal(2, desktop.Run("overlay", "song.lore", "-o", "over"));
        Assert.Contains("names no riffs", desktop.Error, StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
