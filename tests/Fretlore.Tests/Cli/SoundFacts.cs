using Fretlore.Cli.Files;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore sound</c>.</summary>
public sealed class SoundFacts : IDisposable
{
    private readonly Desktop desktop = new();
    private readonly string furnace = Path.Combine(Repository.Root, "demo", "salt-furnace.lore");

    [Fact]
    public void SomeBars_AreWrittenAsAWaveFile_WithAWordOnSafeListening()
    {
        Assert.Equal(0, desktop.Run("sound", furnace, "--from", "1", "--to", "1", "--without", "lead", "--speed", "80%", "--click", "--count-in", "-o", "bar.wav"));
        Assert.Equal(["bar.wav"], desktop.Everything().Keys);
        Assert.StartsWith("RIFF", desktop.Read("bar.wav"), StringComparison.Ordinal);
        Assert.Matches(@"^bar\.wav: 0:\d\d, -1[56]\.\d LUFS\.\n", desktop.Out);
        Assert.Contains("85 dBA for 8 hours", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameCommand_GivesTheSameBytes_OverAnOldFileToo()
    {
        desktop.Write("two.wav", "an old file");
        desktop.Run("sound", furnace, "--to", "1", "-o", "one.wav");
        desktop.Run("sound", furnace, "--to", "1", "-o", "two.wav");
        var files = desktop.Everything();
        Assert.Equal(2, files.Count);
        Assert.Equal(files["one.wav"], files["two.wav"]);
    }

    [Theory]
    [InlineData("--part", "led")]
    [InlineData("--without", "rhythm,lead")]
    [InlineData("--from", "900")]
    [InlineData("--to", "-3")]
    [InlineData("--speed", "0%")]
    [InlineData("--speed", "quick")]
    [InlineData("--speed", "1000%")]
    [InlineData("--bits", "8")]
    [InlineData("-o", "song.mp9")]
    [InlineData("-o", "nowhere/song.wav")]
    public void WhatCannotBePlayed_IsWrongUse_AndLeavesNothing(string option, string value)
    {
        string[] output = option == "-o" ? [] : ["-o", "song.wav"];
        Assert.Equal(2, desktop.Run(["sound", furnace, option, value, .. output]));
        Assert.Contains("fretlore: ", desktop.Error, StringComparison.Ordinal);
        Assert.Empty(desktop.Everything());
    }

    [Fact]
    public void ASoundThatIsNotThere_IsNamedWithTheNearest()
    {
        desktop.Write("song.lore", "title T\ntuning E2 A2 D3 G3 B3 E4\npart guitar \"G\" sound drivin\nsection A\n  guitar @6 W 0\n");
        Assert.Equal(2, desktop.Run("sound", "song.lore", "-o", "song.wav"));
        Assert.Contains("\"drivin\"", desktop.Error, StringComparison.Ordinal);
        Assert.Contains("Perhaps driven was meant", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(["song.lore"], desktop.Everything().Keys);
    }

    [Fact]
    public void AFullDisk_LeavesTheOldFile_AndIsSaidPlainly()
    {
        const int noSpace = 28; // ENOSPC of POSIX.
        desktop.Write("song.wav", "an old file");
        var full = Assert.Throws<IOException>(() => SafeFile.Write(desktop.PathOf("song.wav"), (output, _) =>
        {
            output.WriteByte(1);
            throw new IOException("No space left on device", noSpace);
        }));
        Assert.Equal("the disk is full.", Reason.Of(full));
        Assert.Equal("an old file", desktop.Read("song.wav"));
        Assert.Equal(["song.wav"], desktop.Everything().Keys);
    }

    [Fact]
    public void WhatALinkPointsTo_IsLeftAlone()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights there.");
        desktop.Write("precious.bin", "not a sound");
        File.CreateSymbolicLink(desktop.PathOf("song.wav"), desktop.PathOf("precious.bin"));
        Assert.Equal(0, desktop.Run("sound", furnace, "--to", "1", "-o", "song.wav"));
        Assert.Equal("not a sound", desktop.Read("precious.bin"));
        Assert.StartsWith("RIFF", desktop.Read("song.wav"), StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
