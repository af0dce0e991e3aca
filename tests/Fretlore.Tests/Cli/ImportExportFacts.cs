using Fretlore.Tests.Exchange.Import;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore import</c> and <c>fretlore export</c>.</summary>
public sealed class ImportExportFacts : IDisposable
{
    private const string Sheet = "title Ash\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 90\n\nsection All\n  @6 E 0 3 5 0 Q 7 R |\n";

    private readonly Desktop desktop = new();

    [Theory]
    [InlineData("musicxml", "ash.musicxml")]
    [InlineData("mxl", "ash.mxl")]
    [InlineData("midi", "ash.mid")]
    public void AnExport_StandsBesideItsSheet(string form, string file)
    {
        desktop.Write("ash.lore", Sheet);
        Assert.Equal(0, desktop.Run("export", "ash.lore", "--as", form));
        Assert.True(File.Exists(desktop.PathOf(file)));
        Assert.Equal($"{file} is ready.\n", desktop.Out);
    }

    [Theory]
    [InlineData("musicxml")]
    [InlineData("mxl")]
    public void AnExport_ImportsAgainAsAValidSheet(string form)
    {
        desktop.Write("ash.lore", Sheet);
        Assert.Equal(0, desktop.Run("export", "ash.lore", "--as", form, "-o", "out"));
        Assert.Equal(0, desktop.Run("import", "out", "-o", "back.lore"));
        Assert.Contains("@6 E 0 3 5 0 Q 7 R |", desktop.Read("back.lore"), StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("check", "back.lore"));
    }

    [Fact]
    public void AFileThatIsThere_IsLeftAsItIs_UnlessItIsToBeReplaced()
    {
        desktop.Write("score.xml", Imported.ScoreOf(Imported.Note("E", 4, 16, "whole", 1, 0)));
        desktop.Write("mine.lore", "mine");
        Assert.Equal(2, desktop.Run("import", "score.xml", "-o", "mine.lore"));
        Assert.Equal("mine", desktop.Read("mine.lore"));
        Assert.Equal(0, desktop.Run("import", "score.xml", "-o", "mine.lore", "--replace"));
        Assert.Contains("mine.lore was there and has been replaced.", desktop.Out, StringComparison.Ordinal);
        Assert.StartsWith("title", desktop.Read("mine.lore"), StringComparison.Ordinal);
    }

    [Fact]
    public void TheReport_NamesWhatIsNotCarriedOver_WithItsPlace()
    {
        desktop.Write("score.xml", Imported.ScoreOf(Imported.Note("E", 4, 16, "whole", notations: "<ornaments><turn/></ornaments>")));
        Assert.Equal(0, desktop.Run("import", "score.xml", "-o", "mine.lore"));
        Assert.Contains("Not carried over:\n  bar 1 of Guitar: The sign turn is not carried over.\n", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("Worked out, because the file does not say it:\n  Guitar: The file says no strings and frets", desktop.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing.xml", "mine.lore", 2)]
    [InlineData("bad.xml", "mine.lore", 1)]
    [InlineData("bad.xml", "mine.txt", 2)]
    [InlineData(".", "mine.lore", 2)]
    public void WhatCannotBeImported_LeavesNoFile(string file, string output, int code)
    {
        desktop.Write("bad.xml", "<score-partwise><part>");
        Assert.Equal(code, desktop.Run("import", file, "-o", output));
        Assert.False(File.Exists(desktop.PathOf(output)));
        Assert.NotEmpty(desktop.Error);
    }

    [Theory]
    [InlineData("import", "ash.musicxml", "-o", "mine.lore", "--replace")]
    [InlineData("export", "ash.lore", "--as", "midi", "-o", "mine.lore", "--replace")]
    [InlineData("export", "ash.lore", "--as", "mxl", "-o", "mine.lore", "--replace")]
    [InlineData("export", "ash.lore", "--as", "text", "-o", "mine.lore", "--replace")]
    public void AFileThatCannotBeReplaced_StaysWhole(params string[] arguments)
    {
        desktop.Write("ash.lore", Sheet);
        Assert.Equal(0, desktop.Run("export", "ash.lore", "--as", "musicxml"));
        // A name so long that nothing can be written beside it under a longer one.
        var name = new string('m', 230) + ".lore";
        desktop.Write(name, "mine");
        Assert.Equal(2, desktop.Run([.. arguments.Select(a => a == "mine.lore" ? name : a)]));
        Assert.Equal("mine", desktop.Read(name));
        Assert.Equal(["ash.lore", "ash.musicxml", name], desktop.Everything().Keys);
    }

    [Theory]
    [InlineData("import", "ash.musicxml", "-o", "mine.lore")]
    [InlineData("export", "ash.lore", "--as", "midi", "-o", "mine.lore")]
    public void AReplacedFile_IsAnotherFileInItsPlace_NeverTheOldOneWrittenOver(params string[] arguments)
    {
        desktop.Write("ash.lore", Sheet);
        Assert.Equal(0, desktop.Run("export", "ash.lore", "--as", "musicxml"));
        desktop.Write("mine.lore", new string('m', 100_000));
        // Who has the old file open goes on reading the old one, whole.
        using var old = new FileStream(desktop.PathOf("mine.lore"), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        Assert.Equal(0, desktop.Run([.. arguments, "--replace"]));
        using var reader = new StreamReader(old);
        Assert.Equal(new string('m', 100_000), reader.ReadToEnd());
        Assert.NotEqual('m', desktop.Read("mine.lore")[0]);
    }

    public void Dispose() => desktop.Dispose();
}
