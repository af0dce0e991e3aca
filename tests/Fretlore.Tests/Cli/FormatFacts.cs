using System.Text;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore format</c>.</summary>
public sealed class FormatFacts : IDisposable
{
    private const string Untidy = "title Ash\ntuning   E2 A2 D3 G3 B3 E4\nmeter 4/4\ntempo Q = 100\nkey E minor\npart guitar \"Guitar\"\nriff main\n  @6  Q 0   3 H 5 |\n 7 8 |\nsection Verse\n  guitar   main\n";

    private readonly Desktop desktop = new();

    [Fact]
    public void Format_RewritesTheFile_AndTheSecondTimeLeavesItAlone()
    {
        desktop.Write("ash.lore", Untidy);
        Assert.Equal(0, desktop.Run("format", "ash.lore"));
        var once = desktop.Read("ash.lore");
        Assert.NotEqual(Untidy, once);
        Assert.Equal(0, desktop.Run("format", "ash.lore"));
        Assert.Equal("ash.lore is formatted already.\n", desktop.Out);
        Assert.Equal(once, desktop.Read("ash.lore"));
        Assert.Single(desktop.Everything());
    }

    [Theory]
    [InlineData("salt-furnace")]
    [InlineData("lanterns-on-the-weir")]
    [InlineData("kestrel-over-slate")]
    public void FormattingADemoSong_ChangesNothingThatIsHeardOrRead(string song)
    {
        desktop.Write("song.lore", File.ReadAllBytes(Path.Combine(Repository.Root, "demo", song + ".lore")));
        desktop.Run("kit", "song.lore", "-o", "before", "--no-sound");
        Assert.Equal(0, desktop.Run("format", "song.lore"));
        desktop.Run("kit", "song.lore", "-o", "after", "--no-sound");
        Assert.Equal(desktop.Everything("before"), desktop.Everything("after"));
    }

    [Fact]
    public void Check_SaysWhetherTheFileWouldChange_AndDoesNotChangeIt()
    {
        desktop.Write("ash.lore", Untidy);
        Assert.Equal(1, desktop.Run("format", "ash.lore", "--check"));
        Assert.Equal(Untidy, desktop.Read("ash.lore"));
        desktop.Run("format", "ash.lore");
        Assert.Equal(0, desktop.Run("format", "ash.lore", "--check"));
    }

    [Fact]
    public void ADash_FormatsTheStandardInputToTheStandardOutput()
    {
        desktop.Write("ash.lore", Untidy);
        desktop.Run("format", "ash.lore");
        Assert.Equal(0, desktop.RunWith(Encoding.UTF8.GetBytes(Untidy), "format", "-"));
        Assert.Equal(desktop.Read("ash.lore"), desktop.Out);
    }

    [Fact]
    public void AStarterSheet_IsFormattedAlready()
    {
        desktop.Run("new", "ash.lore");
        Assert.Equal(0, desktop.Run("format", "ash.lore", "--check"));
    }

    public static TheoryData<byte[]> SheetsToLeaveAlone() => new(
        "riff main\n  @6 Q 0 0 0 { |\n"u8.ToArray(),
        "rif main\n"u8.ToArray(),
        [],
        [.. "title  Br"u8, 0xFC, .. "cke\n"u8],
        [.. Encoding.ASCII.GetBytes(Untidy), 0]);

    [Theory]
    [MemberData(nameof(SheetsToLeaveAlone))]
    public void ASheetWithSyntaxErrors_IsLeftAsItIs(byte[] sheet)
    {
        desktop.Write("bad.lore", sheet);
        var before = desktop.Everything();
        Assert.Equal(1, desktop.Run("format", "bad.lore"));
        Assert.Matches(@"bad\.lore:\d+:\d+ error FL\d{4} ", desktop.Error);
        Assert.Empty(desktop.Out);
        Assert.Equal(before, desktop.Everything());
    }

    [Fact]
    public void AMissingSheet_IsWrongUse() => Assert.Equal(2, desktop.Run("format", "nowhere.lore"));

    [Fact]
    public void AWriteProtectedSheet_IsLeftAsItIs()
    {
        Assert.SkipWhen(Environment.IsPrivilegedProcess, "The superuser may write anything.");
        desktop.Write("ash.lore", Untidy);
        File.SetAttributes(desktop.PathOf("ash.lore"), FileAttributes.ReadOnly);
        Assert.Equal(2, desktop.Run("format", "ash.lore"));
        Assert.Equal(Untidy, desktop.Read("ash.lore"));
        File.SetAttributes(desktop.PathOf("ash.lore"), FileAttributes.Normal);
    }

    public void Dispose() => desktop.Dispose();
}
