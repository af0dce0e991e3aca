namespace Fretlore.Tests.Cli;

/// <summary>Where a verb is to write is looked at before it does the work.</summary>
public sealed class OutputPlaceFacts : IDisposable
{
    private readonly Desktop desktop = new();

    public OutputPlaceFacts()
    {
        desktop.Run("new", "ash.lore");
        desktop.Run("export", "ash.lore", "--as", "musicxml", "-o", "ash.musicxml");
        desktop.Write("notes.txt", "Not a folder.");
    }

    public static TheoryData<string> Verbs =>
    [
        "kit ash.lore", "watch ash.lore", "overlay ash.lore", "captions ash.lore", "sound ash.lore .wav", "pages ash.lore .pdf", "export ash.lore --as midi", "retune ash.lore --to D2,A2,D3,G3,A3,D4 .lore",
        "import ash.musicxml .lore",
    ];

    [Theory]
    [MemberData(nameof(Verbs))]
    public void PlaceBelowAFile_IsRefusedBeforeAnyWork(string verb) => Refuses(verb, "notes.txt/out");

    [Theory]
    [MemberData(nameof(Verbs))]
    public void PlaceThatNobodyMayWriteTo_IsRefusedBeforeAnyWork(string verb)
    {
        Assert.SkipUnless(Directory.Exists("/proc/self"), "Needs a folder that not even the superuser can write to.");
        Refuses(verb, "/proc/out");
    }

    [Theory]
    [InlineData("captions ash.lore")]
    [InlineData("sound ash.lore .wav")]
    [InlineData("pages ash.lore .pdf")]
    public void Device_IsNoFileToWrite(string verb)
    {
        Assert.SkipUnless(Directory.Exists("/dev"), "Only some systems have devices in a folder.");
        Refuses(verb, "/dev/fretlore-out");
        Assert.Contains(" is a device.", desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void FileThatIsThere_IsLeftUnlessItMayBeReplaced()
    {
        var before = desktop.Everything();
        Assert.Equal(2, desktop.Run("export", "ash.lore", "--as", "musicxml"));
        Assert.Contains("ash.musicxml is already there and was left as it is.", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(before, desktop.Everything());
        Assert.Equal(0, desktop.Run("export", "ash.lore", "--as", "musicxml", "--replace"));
        Assert.Equal(before, desktop.Everything());
    }

    [Fact]
    public void LookingAtAPlace_LeavesNothingBehind()
    {
        Assert.Equal(0, desktop.Run("captions", "ash.lore", "-o", "film.vtt"));
        Assert.Equal(["ash.lore", "ash.musicxml", "film.vtt", "notes.txt"], desktop.Everything().Keys);
    }

    private void Refuses(string verb, string place)
    {
        var words = verb.Split(' ').Select(word => word.Replace(',', ' ')).ToList();
        var ending = words[^1].StartsWith('.') ? words[^1] : "";
        if (ending.Length > 0) words.RemoveAt(words.Count - 1);
        var before = desktop.Everything();
        Assert.Equal(2, desktop.Run([.. words, "-o", place + ending]));
        Assert.Matches(" (can't be written: .+|is a device)\\.", desktop.Error);
        Assert.DoesNotContain(" ...", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(before, desktop.Everything());
    }

    public void Dispose() => desktop.Dispose();
}
