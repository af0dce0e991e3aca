using Fretlore.Cli.Files;

namespace Fretlore.Tests.Cli;

/// <summary>Writing over a file so that it is never harmed.</summary>
public sealed class SafeFileFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Fact]
    public void Replace_LeavesOneFileWithTheNewBytes()
    {
        desktop.Write("ash.lore", "old");
        SafeFile.Replace(desktop.PathOf("ash.lore"), "new"u8);
        Assert.Equal("new", desktop.Read("ash.lore"));
        Assert.Single(desktop.Everything());
    }

    [Fact]
    public void Replace_KeepsWhoMayReadAndWrite()
    {
        if (OperatingSystem.IsWindows()) Assert.Skip("Windows keeps rights with the folder.");
        else
        {
            desktop.Write("ash.lore", "old");
            const UnixFileMode Mode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead;
            File.SetUnixFileMode(desktop.PathOf("ash.lore"), Mode);
            SafeFile.Replace(desktop.PathOf("ash.lore"), "new"u8);
            Assert.Equal(Mode, File.GetUnixFileMode(desktop.PathOf("ash.lore")));
        }
    }

    [Fact]
    public void Replace_ThroughALink_KeepsTheLink()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights there.");
        desktop.Write("real/ash.lore", "old");
        File.CreateSymbolicLink(desktop.PathOf("link.lore"), desktop.PathOf("real/ash.lore"));
        SafeFile.Replace(desktop.PathOf("link.lore"), "new"u8);
        Assert.Equal("new", desktop.Read("real/ash.lore"));
        Assert.NotNull(new FileInfo(desktop.PathOf("link.lore")).LinkTarget);
    }

    [Fact]
    public void Replace_OfNothing_FailsAndMakesNothing()
    {
        Assert.Throws<FileNotFoundException>(() => SafeFile.Replace(desktop.PathOf("ash.lore"), "new"u8));
        Assert.Empty(desktop.Everything());
    }

    [Fact]
    public void TryCreate_NeverWritesOverAFile()
    {
        Assert.True(SafeFile.TryCreate(desktop.PathOf("ash.lore"), "first"u8));
        Assert.False(SafeFile.TryCreate(desktop.PathOf("ash.lore"), "second"u8));
        Assert.Equal("first", desktop.Read("ash.lore"));
    }

    public void Dispose() => desktop.Dispose();
}
