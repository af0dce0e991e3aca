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
    public void AFullDisk_IsSaidInOneLine()
    {
        Assert.SkipUnless(File.Exists("/dev/full"), "Needs the device that is always full.");
        File.CreateSymbolicLink(desktop.PathOf("full.wav"), "/dev/full");
        Assert.Equal(2, desktop.Run("sound", furnace, "--to", "1", "-o", "full.wav"));
        Assert.Contains("full.wav can't be written: ", desktop.Error, StringComparison.Ordinal);
    }

    public void Dispose() => desktop.Dispose();
}
