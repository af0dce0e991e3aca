using System.Text;
using Fretlore.Cli.Files;
using Fretlore.Lesson.Kit;

namespace Fretlore.Tests.Cli;

/// <summary>Writing a kit into a folder without harming what is there.</summary>
public sealed class KitFolderFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void ANewKit_IsThereAsAWhole_AndNothingElse()
    {
        Assert.Empty(Write(Kit(("pages/full.pdf", "pages"), ("script.md", "words"))));
        Assert.Equal(["kit/kit.json", "kit/pages/full.pdf", "kit/script.md"], desktop.Everything().Keys);
    }

    [Fact]
    public void AnotherKit_ReplacesTheFirst_AndTakesAwayWhatItNoLongerHas()
    {
        Write(Kit(("pages/full.pdf", "pages"), ("pages/full-02.svg", "second"), ("old/x.md", "x")));
        Write(Kit(("pages/full.pdf", "other pages")));
        Assert.Equal(["kit/kit.json", "kit/pages/full.pdf"], desktop.Everything().Keys);
        Assert.Equal("other pages", desktop.Read("kit/pages/full.pdf"));
        Assert.False(Directory.Exists(desktop.PathOf("kit/old")));
    }

    [Fact]
    public void FilesThatAreNotTheKits_StayAsTheyAre()
    {
        Write(Kit(("script.md", "words"), ("pages/full-02.svg", "second")));
        desktop.Write("kit/take.wav", "mine");
        desktop.Write("kit/pages/notes.txt", "mine too");
        Write(Kit(("script.md", "other words")));
        Assert.Equal("mine", desktop.Read("kit/take.wav"));
        Assert.Equal("mine too", desktop.Read("kit/pages/notes.txt"));
    }

    [Fact]
    public void AFileChangedByHand_IsKeptBesideTheNewOne()
    {
        Write(Kit(("script.md", "words")));
        desktop.Write("kit/script.md", "my words");
        Assert.Equal(["script.kept.md"], Write(Kit(("script.md", "other words"))));
        Assert.Equal("other words", desktop.Read("kit/script.md"));
        Assert.Equal("my words", desktop.Read("kit/script.kept.md"));

        desktop.Write("kit/script.md", "my second words");
        Assert.Equal(["script.kept-2.md"], Write(Kit(("script.md", "third words"))));
        Assert.Equal("my words", desktop.Read("kit/script.kept.md"));
    }

    [Fact]
    public void AFileOfTheSameName_ThatTheEarlierKitDidNotHave_IsKept()
    {
        Write(Kit(("script.md", "words")));
        desktop.Write("kit/song.mid", "my own");
        Assert.Equal(["song.kept.mid"], Write(Kit(("script.md", "words"), ("song.mid", "made"))));
        Assert.Equal("my own", desktop.Read("kit/song.kept.mid"));
    }

    [Fact]
    public void ALateHandChange_OfAFileNoLongerMade_IsNotTakenAway()
    {
        Write(Kit(("script.md", "words"), ("pages/full-02.svg", "second")));
        desktop.Write("kit/pages/full-02.svg", "drawn on");
        Write(Kit(("script.md", "words")));
        Assert.Equal("drawn on", desktop.Read("kit/pages/full-02.svg"));
    }

    [Fact]
    public void TheSameKitAgain_TouchesNoFile()
    {
        var kit = Kit(("pages/full.pdf", "pages"), ("script.md", "words"));
        Write(kit);
        var longAgo = new DateTime(2001, 2, 3, 4, 5, 6, DateTimeKind.Utc);
        foreach (var file in kit.Files) File.SetLastWriteTimeUtc(desktop.PathOf("kit/" + file.Path), longAgo);
        Write(kit);
        Assert.All(kit.Files, file => Assert.Equal(longAgo, File.GetLastWriteTimeUtc(desktop.PathOf("kit/" + file.Path))));
    }

    [Fact]
    public void AnEmptyFolder_TakesAKit()
    {
        Directory.CreateDirectory(desktop.PathOf("kit"));
        Assert.Null(Folder().Refusal());
        Write(Kit(("script.md", "words")));
        Assert.Equal(2, desktop.Everything().Count);
    }

    [Theory]
    [InlineData("kit", "a file where the folder should be")]
    [InlineData("kit/holiday.jpg", "someone's pictures")]
    [InlineData("kit/kit.json", "{\"name\":\"another program's kit\"}")]
    [InlineData("kit/kit.json", "not JSON at all")]
    [InlineData("kit/kit.json", "null")]
    [InlineData("kit/kit.json", "{\"fretlore\":\"0.1.0\",\"files\":[null]}")]
    public void AFolderThatIsNoKit_IsRefused(string file, string content)
    {
        desktop.Write(file, content);
        Assert.NotNull(Folder().Refusal());
    }

    [Fact]
    public void AListThatNamesFilesOutside_CannotTakeThemAway()
    {
        var precious = Kit(("precious.txt", "precious")).Files[0];
        desktop.Write("precious.txt", "precious");
        desktop.Write("kit-2/precious.txt", "precious");
        Write(Kit(("script.md", "words")));
        KitListEntry Entry(string path) => new(path, "", precious.Bytes.Length, precious.Sha256);
        var lying = new KitList("0.1.0", "", null, "a4", [], [Entry("../precious.txt"), Entry("../kit-2/precious.txt"), Entry(desktop.PathOf("precious.txt"))]);
        desktop.Write("kit/kit.json", [.. lying.ToFile().Bytes]);
        Write(Kit(("script.md", "other words")));
        Assert.True(File.Exists(desktop.PathOf("precious.txt")));
        Assert.True(File.Exists(desktop.PathOf("kit-2/precious.txt")));
    }

    [Fact]
    public void AWriteThatFails_LeavesTheEarlierKitWhole()
    {
        Write(Kit(("a.md", "a"), ("b.md", "b")));
        File.Delete(desktop.PathOf("kit/b.md"));
        desktop.Write("kit/b.md/inside.txt", "a folder where a file should go");
        var before = desktop.Everything();
        Assert.ThrowsAny<IOException>(() => Write(Kit(("a.md", "new a"), ("b.md", "new b"))));
        Assert.Equal(before, desktop.Everything());
        Assert.Empty(Directory.GetDirectories(desktop.PathOf("kit"), ".*"));
    }

    [Fact]
    public void WhatAKilledRunLeftBehind_IsTakenAwayLater()
    {
        Write(Kit(("a.md", "a")));
        desktop.Write("kit/.fretlore-building-1/a.md", "half");
        Directory.SetLastWriteTimeUtc(desktop.PathOf("kit/.fretlore-building-1"), DateTime.UtcNow.AddHours(-2));
        Write(Kit(("a.md", "b")));
        Assert.Equal(["kit/a.md", "kit/kit.json"], desktop.Everything().Keys);
    }

    private KitFolder Folder() => new(desktop.PathOf("kit"));

    private IReadOnlyList<string> Write(LessonKit kit) => Folder().Write(kit);

    private static LessonKit Kit(params (string Path, string Text)[] files)
    {
        KitFile[] made = [.. files.Select(file => new KitFile(file.Path, [.. Encoding.UTF8.GetBytes(file.Text)], "for a test"))];
        var list = new KitList("0.1.0", "Ash", null, "a4", [], [.. made.Select(f => new KitListEntry(f.Path, f.Purpose, f.Bytes.Length, f.Sha256))]);
        return new LessonKit([.. made, list.ToFile()]);
    }

    public void Dispose() => desktop.Dispose();
}
