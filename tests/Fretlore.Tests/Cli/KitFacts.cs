using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Fretlore.Tests.Outside;

namespace Fretlore.Tests.Cli;

/// <summary><c>fretlore kit</c>.</summary>
public sealed class KitFacts : IDisposable
{
    private readonly Desktop desktop = new();

    public KitFacts() => Assert.Equal(0, desktop.Run("new", "ash.lore"));

    [Fact]
    public void AKit_HoldsPagesMusicXmlMidiScriptAndItsList()
    {
        Assert.Equal(0, desktop.Run("kit", "ash.lore", "-o", "kit", "--no-sound"));
        var files = desktop.Everything("kit");
        Assert.Empty(((string[])["kit.json", "pages/full.pdf", "pages/full-01.svg", "song.musicxml", "song.mid", "script.md"]).Except(files.Keys));
        Assert.StartsWith("%PDF-", desktop.Read("kit/pages/full.pdf"), StringComparison.Ordinal);
        Assert.StartsWith("<svg ", desktop.Read("kit/pages/full-01.svg"), StringComparison.Ordinal);
        Assert.StartsWith("MThd", desktop.Read("kit/song.mid"), StringComparison.Ordinal);
        Assert.Contains("<score-partwise", desktop.Read("kit/song.musicxml"), StringComparison.Ordinal);
        Assert.StartsWith("# ", desktop.Read("kit/script.md"), StringComparison.Ordinal);
        Assert.Contains("licence", desktop.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void TheList_NamesEveryOtherFileWithItsHashAndPurpose()
    {
        desktop.Run("kit", "ash.lore", "-o", "kit", "--no-sound");
        using var list = JsonDocument.Parse(desktop.Read("kit/kit.json"));
        var listed = list.RootElement.GetProperty("files").EnumerateArray().ToList();
        Assert.Equal(
            desktop.Everything("kit").Keys.Where(path => path != "kit.json"),
            listed.Select(file => file.GetProperty("path").GetString()!).Order(StringComparer.Ordinal));
        Assert.All(listed, file =>
        {
            var bytes = File.ReadAllBytes(desktop.PathOf("kit/" + file.GetProperty("path").GetString()));
            Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), file.GetProperty("sha256").GetString());
            Assert.Equal(bytes.Length, file.GetProperty("bytes").GetInt32());
            Assert.NotEmpty(file.GetProperty("for").GetString()!);
        });
    }

    [Fact]
    public void AKitWithSound_HasTheSongAndEachPartAlone_TheSameBytesTwice()
    {
        desktop.Write("duo.lore", """
            title  Duo
            tuning E2 A2 D3 G3 B3 E4
            tempo  Q = 120
            part rhythm "Rhythm guitar"  sound driven
            part lead   "Lead guitar"    sound singing
            riff main
              @654 E [0 2 2] 0m 0m 0m Q [3 5 5] R |
            section All
              rhythm main
              lead   @2 H 8+v E 5,8 Q 5v |
            lesson
              step "Main"      teach main  at 60% 100%
              step "Together"  teach All

            """);
        Assert.Equal(0, desktop.Run("kit", "duo.lore", "-o", "kit"));
        Assert.Contains("Playing the song ...", desktop.Error, StringComparison.Ordinal);
        var files = desktop.Everything("kit");
        foreach (var name in (string[])["full", "part-rhythm", "part-lead", "loops/riff-main-60", "loops/riff-main-100", "loops/section-all-100"]) Assert.StartsWith("OggS", desktop.Read($"kit/sound/{name}.opus"), StringComparison.Ordinal);
        Assert.Contains("85 dBA", desktop.Out, StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("kit", "duo.lore", "-o", "again"));
        Assert.Equal(files, desktop.Everything("again"));
        Assert.Equal(0, desktop.Run("kit", "duo.lore", "-o", "kit", "--no-sound"));
        Assert.Equal(files.Keys.Where(path => !path.EndsWith(".opus", StringComparison.Ordinal)), desktop.Everything("kit").Keys);
        Assert.DoesNotContain("Playing", desktop.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ASoundThatDoesNotExist_LeavesTheKitWithoutSound_AndSaysSo()
    {
        desktop.Write("duo.lore", "title T\ntuning E2 A2 D3 G3 B3 E4\ntempo Q = 120\npart solo \"Solo\" sound drivn\nsection A\n  solo @6 W 0\n");
        Assert.Equal(0, desktop.Run("kit", "duo.lore", "-o", "kit"));
        Assert.Contains("The kit has no sound", desktop.Out, StringComparison.Ordinal);
        Assert.Contains("Perhaps driven was meant", desktop.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("salt-furnace")]
    [InlineData("lanterns-on-the-weir")]
    [InlineData("kestrel-over-slate")]
    public void ADemoSong_GivesTheSameBytesTwice_WithoutAWarning(string song)
    {
        var sheet = Path.Combine(Repository.Root, "demo", song + ".lore");
        Assert.Equal(0, desktop.Run("kit", sheet, "-o", "first", "--no-sound"));
        Assert.DoesNotContain("FL", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(0, desktop.Run("kit", sheet, "-o", "deep/er/second", "--no-sound"));
        Assert.Equal(desktop.Everything("first"), desktop.Everything("deep/er/second"));
    }

    [Fact]
    public void Paper_IsA4UnlessLetterIsAskedFor()
    {
        desktop.Run("kit", "ash.lore", "-o", "a4", "--no-sound");
        desktop.Run("kit", "ash.lore", "-o", "letter", "--no-sound", "--paper", "letter");
        Assert.Contains("width=\"210mm\" height=\"297mm\"", desktop.Read("a4/pages/full-01.svg"), StringComparison.Ordinal);
        Assert.Contains("width=\"215.9mm\" height=\"279.4mm\"", desktop.Read("letter/pages/full-01.svg"), StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_ChooseWhatIsOnThePages_AndNothingElse()
    {
        var sheet = Path.Combine(Repository.Root, "demo", "salt-furnace.lore");
        desktop.Run("kit", sheet, "-o", "all", "--no-sound");
        Assert.Equal(0, desktop.Run("kit", sheet, "-o", "lead", "--no-sound", "--parts", "Lead"));
        var (all, lead) = (desktop.Everything("all"), desktop.Everything("lead"));
        Assert.True(lead.Count < all.Count);
        Assert.Equal(all["song.mid"], lead["song.mid"]);
        Assert.Equal(all["song.musicxml"], lead["song.musicxml"]);
    }

    [Fact]
    public void Progress_IsALineAStepInAPipe_AndDoesNotChangeTheKitOnATerminal()
    {
        using var terminal = new Desktop { ErrorIsTerminal = true };
        terminal.Run("new", "ash.lore");
        Assert.Equal(0, terminal.Run("kit", "ash.lore", "-o", "kit", "--no-sound"));
        Assert.Equal(0, desktop.Run("kit", "ash.lore", "-o", "kit", "--no-sound"));
        var steps = desktop.Error.Split('\n').Where(line => line.EndsWith(" ...", StringComparison.Ordinal)).ToArray();
        Assert.Equal(["Reading the music ...", "Engraving pages ...", "Writing MusicXML ..."], steps[..3]);
        Assert.Distinct(steps);
        Assert.Equal(desktop.Everything(), terminal.Everything());
    }

    [Theory]
    [InlineData("--parts", "gutiar")]
    [InlineData("--parts", ",")]
    [InlineData("--paper", "a3")]
    public void AChoiceThatCannotBe_IsWrongUse_AndMakesNothing(string option, string value)
    {
        Assert.Equal(2, desktop.Run("kit", "ash.lore", "-o", "kit", "--no-sound", option, value));
        Assert.StartsWith("fretlore: ", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(["ash.lore"], desktop.Everything().Keys);
    }

    [Fact]
    public void APartNearlyNamed_IsSuggested()
    {
        desktop.Run("kit", "ash.lore", "-o", "kit", "--no-sound", "--parts", "gutiar");
        Assert.Contains("Perhaps guitar was meant", desktop.Error, StringComparison.Ordinal);
    }

    public static TheoryData<string, byte[]> BadSheets()
    {
        var noise = new byte[5_000_000];
        new Random(20261125).NextBytes(noise);
        return new()
        {
            { "empty", [] },
            { "noise", noise },
            { "noise that is text", Encoding.ASCII.GetBytes(Convert.ToBase64String(noise, Base64FormattingOptions.InsertLineBreaks)) },
            { "not UTF-8", [.. "title  Br"u8, 0xFC, .. "cke\n"u8] },
            { "a bar too short", Sheet("riff main\n  @6 Q 0 0 0 |\n") },
            { "a bar too long", Sheet("riff main\n  @6 Q 0 0 0 0 0 |\n") },
            { "an unknown riff", Sheet("riff main\n  @6 W 0 |\n", plays: "mian") },
            { "a riff that plays itself", Sheet("riff main\n  main\n") },
            { "a fret beyond the neck", Sheet("riff main\n  @6 W 99 |\n") },
            { "two notes on one string", Sheet("riff main\n  @6 W 0 bass{ @6 W 3 } |\n") },
            { "a hammer-on to a lower fret", Sheet("riff main\n  @6 H 5,t3 |\n") },
            { "a shape with too few strings", Sheet("shape home [0 2 2]\nriff main\n  @6-1 W #home |\n") },
            { "ten thousand nested groups", Sheet($"riff main\n  @6 {string.Concat(Enumerable.Repeat("pm{ ", 10_000))} W 0 {new string('}', 10_000)} |\n") },
        };
    }

    [Theory]
    [MemberData(nameof(BadSheets), DisableDiscoveryEnumeration = true)]
    public void ABadSheet_IsSaidByLineColumnAndRemedy_AndLeavesTheEarlierKit(string what, byte[] sheet)
    {
        desktop.Run("kit", "ash.lore", "-o", "kit", "--no-sound");
        desktop.Write("bad.lore", sheet);
        var before = desktop.Everything();
        foreach (var verb in (string[][])[["check", "bad.lore"], ["kit", "bad.lore", "-o", "kit", "--no-sound"]])
        {
            Assert.True(desktop.Run(verb) == 1, what);
            Assert.Matches(@"(?m)^bad\.lore:\d+:\d+ error FL\d{4} .+\n(    .*\n    .*\n)?  \S.+$", desktop.Out + desktop.Error);
        }
        Assert.Equal(before, desktop.Everything());
    }

    [Theory]
    [InlineData("nowhere.lore")]
    [InlineData(".")]
    public void ASheetThatIsNotThere_IsWrongUse(string path)
    {
        Assert.Equal(2, desktop.Run("kit", path, "-o", "kit"));
        Assert.Matches(@":1:1 error FL000[12] .+\n  \S", desktop.Error);
        Assert.Equal(["ash.lore"], desktop.Everything().Keys);
    }

    [Theory]
    [InlineData("ash.lore")]
    [InlineData("ash.lore/kit")]
    [InlineData(".")]
    [InlineData("")]
    public void AFolderThatCannotTakeAKit_IsRefused_AndNothingIsHarmed(string folder)
    {
        var before = desktop.Everything();
        Assert.Equal(2, desktop.Run("kit", "ash.lore", "-o", folder));
        Assert.Contains("can't", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(before, desktop.Everything());
    }

    [Fact]
    public void AnUnwritableFolder_IsRefused()
    {
        Assert.SkipUnless(Directory.Exists("/proc/self"), "Needs a folder that not even the superuser can write to.");
        Assert.Equal(2, desktop.Run("kit", "ash.lore", "-o", "/proc/kit", "--no-sound"));
        Assert.Contains("/proc/kit can't be written: ", desktop.Error, StringComparison.Ordinal);
        Assert.Equal(2, desktop.Run("new", "/proc/ash.lore"));
    }

    /// <summary>A sheet whose faulty part begins in line 9 with <paramref name="fault"/> and plays in its only section.</summary>
    private static byte[] Sheet(string fault, string plays = "main") => Encoding.UTF8.GetBytes(
        $"title Ash\ntuning E2 A2 D3 G3 B3 E4\nmeter 4/4\ntempo Q = 100\nkey E minor\npart guitar \"Guitar\"\n\n\n{fault}\nsection Verse\n  guitar  {plays}\n");

    public void Dispose() => desktop.Dispose();
}
