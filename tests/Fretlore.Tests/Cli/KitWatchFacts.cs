using Fretlore.Cli;
using Fretlore.Cli.Files;
using Fretlore.Engraving.Layout;
using Fretlore.Lesson.Kit;
using Fretlore.Music.Chords;
using Fretlore.Tests.Songs;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore watch</c>, look by look.</summary>
public sealed class KitWatchFacts : IDisposable
{
    private const string Song = Sheets.Top + """
        riff main
          @6 Q 0 3 5 3 |

        section All
          guitar  main | @5 Q 0 2 3 5 |

        lesson
          excerpt bar 1
          step "Main" teach main

        """;

    private readonly Desktop desktop = new();
    private readonly StringWriter output = new() { NewLine = "\n" };
    private readonly StringWriter error = new() { NewLine = "\n" };
    private TimeSpan now;

    [Fact]
    public void Save_MakesTheSameKitAsMakingItAnew()
    {
        using var watch = Watch(new KitOptions());
        Save(watch, Song);
        foreach (var changed in (string[])[Song.Replace("2 3 5 |", "2 3 7 |", StringComparison.Ordinal), Song.Replace("\"Main\"", "\"The riff\"", StringComparison.Ordinal), Song])
        {
            Save(watch, changed);
            desktop.Run("kit", "song.lore", "-o", "anew", "--no-sound");
            Assert.Equal(desktop.Everything("anew"), desktop.Everything("kit"));
        }
    }

    [Fact]
    public void Save_ThatChangesNoMusic_ChangesNoFile()
    {
        using var watch = Watch(new KitOptions());
        Save(watch, Song);
        var before = desktop.Everything("kit");
        Save(watch, Song + "\n-- A remark.\n");
        Assert.EndsWith("0 files changed.\n", output.ToString(), StringComparison.Ordinal);
        Assert.Equal(before, desktop.Everything("kit"));
    }

    [Fact]
    public void BarOutsideTheExcerpt_LeavesTheExcerptAsItIs()
    {
        using var watch = Watch(new KitOptions());
        Save(watch, Song);
        var before = desktop.Read("kit/excerpt/pages.pdf");
        Save(watch, Song.Replace("2 3 5 |", "2 3 7 |", StringComparison.Ordinal));
        Assert.Equal(before, desktop.Read("kit/excerpt/pages.pdf"));
    }

    [Fact]
    public void SheetWithErrors_LeavesTheKitWhole()
    {
        using var watch = Watch(new KitOptions());
        Save(watch, Song);
        var before = desktop.Everything("kit");
        Save(watch, Song.Replace("Q 0 3 5 3", "Q 0 3 5", StringComparison.Ordinal));
        Assert.Contains("The kit stays as it was: 1 error in ", error.ToString(), StringComparison.Ordinal);
        Assert.Contains("FL2100", error.ToString(), StringComparison.Ordinal);
        Assert.Equal(before, desktop.Everything("kit"));
    }

    [Fact]
    public void SheetInTheMiddleOfASave_IsWaitedFor()
    {
        using var watch = Watch(new KitOptions());
        Save(watch, Song);
        desktop.Write("song.lore", Song[..80]);
        Assert.True(watch.Look(now, CancellationToken.None));
        File.Delete(desktop.PathOf("song.lore"));
        Assert.True(watch.Look(now, CancellationToken.None));
        desktop.Write("song.lore", Song);
        Assert.True(watch.Look(now, CancellationToken.None));
        Assert.DoesNotContain("errors", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Sound_ComesWhenTheSheetIsLeftAlone()
    {
        using var watch = Watch(new KitOptions { SoundRoom = () => new MemoryStream() });
        Save(watch, Song);
        var before = desktop.Everything("kit");
        Save(watch, Song.Replace("2 3 5 |", "2 3 7 |", StringComparison.Ordinal));
        Assert.Contains("The sound is still the old one", output.ToString(), StringComparison.Ordinal);
        var between = desktop.Everything("kit");
        Assert.Equal(before["sound/full.opus"], between["sound/full.opus"]);
        Assert.NotEqual(before["song.mid"], between["song.mid"]);
        now += KitWatch.Quiet;
        Assert.True(watch.Look(now, CancellationToken.None));
        desktop.Run("kit", "song.lore", "-o", "anew");
        Assert.Equal(desktop.Everything("anew"), desktop.Everything("kit"));
    }

    [Fact]
    public void SoundOfOneBarAmongMany_ComesAtOnce()
    {
        var song = Song.Replace("main | @5", "main times 20 | @5", StringComparison.Ordinal);
        using var watch = Watch(new KitOptions { SoundRoom = () => new MemoryStream() });
        Save(watch, song);
        var before = desktop.Everything("kit");
        Save(watch, song.Replace("2 3 5 |", "2 3 7 |", StringComparison.Ordinal));
        Assert.DoesNotContain("The sound is still the old one", output.ToString(), StringComparison.Ordinal);
        Assert.NotEqual(before["sound/full.opus"], desktop.Everything("kit")["sound/full.opus"]);
    }

    [Fact]
    public void Watch_MakesTheKitAsItWasAskedFor()
    {
        using var watch = Watch(new KitOptions { Show = Notation.Tab, Degrees = true, SymbolStyle = ChordStyle.Signs }, "guitar");
        Save(watch, Song);
        desktop.Run("kit", "song.lore", "-o", "once", "--no-sound", "--show", "tab", "--degrees", "--symbols", "signs", "--parts", "guitar");
        Assert.Equal(desktop.Everything("once"), desktop.Everything("kit"));
    }

    [Fact]
    public void PartThatTheSheetLosesWhileItIsWatched_IsAskedFor_AndTheKitStays()
    {
        using var watch = Watch(new KitOptions(), "guitar");
        Save(watch, Song);
        var before = desktop.Everything("kit");
        Save(watch, Song.Replace("guitar", "lead", StringComparison.Ordinal));
        Assert.Contains("guitar", error.ToString(), StringComparison.Ordinal);
        Assert.Equal(before, desktop.Everything("kit"));
    }

    [Fact]
    public void NoRoomForTheSound_IsSaid_AndTheWatchGoesOn()
    {
        var isFull = true;
        using var watch = Watch(new KitOptions { SoundRoom = () => isFull ? throw new IOException("There is no room.") : new MemoryStream() });
        Save(watch, Song);
        Assert.Contains("the sound can't be worked out in ", error.ToString(), StringComparison.Ordinal);
        Assert.False(Directory.Exists(desktop.PathOf("kit")));
        isFull = false;
        Save(watch, Song + "\n-- A remark.\n");
        Assert.True(File.Exists(desktop.PathOf("kit/sound/full.opus")));
    }

    [Fact]
    public void WatchThatIsStopped_LeavesTheOldKitWhole()
    {
        using var watch = Watch(new KitOptions());
        Save(watch, Song);
        var before = desktop.Everything("kit");
        desktop.Write("song.lore", Song.Replace("2 3 5 |", "2 3 7 |", StringComparison.Ordinal));
        using var stopped = new CancellationTokenSource();
        stopped.Cancel();
        watch.Look(now, stopped.Token);
        watch.Look(now, stopped.Token);
        Assert.Equal(before, desktop.Everything("kit"));
    }

    [Fact]
    public void FileThatIsNotThere_IsSaidAtOnce()
    {
        Assert.Equal(2, desktop.Run("watch", "none.lore", "-o", "kit"));
        Assert.Equal(2, desktop.Run("watch", "-", "-o", "kit"));
        Assert.Contains("standard input can't be watched", desktop.Error, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        desktop.Dispose();
        output.Dispose();
        error.Dispose();
    }

    private KitWatch Watch(KitOptions options, string? parts = null)
    {
        var surroundings = new Surroundings { Folder = desktop.Folder, In = Stream.Null, Out = output, Error = error };
        return new KitWatch(surroundings, "song.lore", new KitFolder(desktop.PathOf("kit")), new KitWish(options, parts));
    }

    private void Save(KitWatch watch, string text)
    {
        desktop.Write("song.lore", text);
        for (var look = 0; look < 2; look++)
        {
            now += TimeSpan.FromMilliseconds(250);
            Assert.True(watch.Look(now, CancellationToken.None), error.ToString());
        }
    }
}
