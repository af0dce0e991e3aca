namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore new</c>.</summary>
public sealed class NewFacts : IDisposable
{
    private readonly Desktop desktop = new();

    [Theory]
    [InlineData("salt-furnace.lore", "salt-furnace.lore", "Salt Furnace")]
    [InlineData("salt-furnace", "salt-furnace.lore", "Salt Furnace")]
    [InlineData("--.lore", "--.lore", "Untitled", "--")]
    public void AStarterSheet_HasTheFilesNameAsTitle_AndNothingWrong(string name, string file, string title, params string[] before)
    {
        Assert.Equal(0, desktop.Run(["new", .. before, name]));
        Assert.StartsWith($"title   {title}\n", desktop.Read(file), StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run(["check", .. before, file]));
        Assert.EndsWith(": nothing found\n", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileThatIsThere_IsLeftAsItIs()
    {
        desktop.Write("ash.lore", "mine");
        Assert.Equal(2, desktop.Run("new", "ash.lore"));
        Assert.Equal("mine", desktop.Read("ash.lore"));
        Assert.Contains("already there", desktop.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ash.txt", "ends in .lore")]
    [InlineData("missing/ash.lore", "does not exist")]
    [InlineData(".", "folder")]
    [InlineData("", "folder")]
    public void ANameThatCannotBe_IsWrongUse(string name, string why)
    {
        Assert.Equal(2, desktop.Run("new", name));
        Assert.Contains(why, desktop.Error, StringComparison.Ordinal);
        Assert.Empty(desktop.Everything());
    }

    public void Dispose() => desktop.Dispose();
}
