using System.Text.Json;

namespace Fretlore.Tests.Practice;

/// <summary>The practice page as it runs in Chromium, heard sample by sample.</summary>
/// <remarks>No test here looks at how long the page takes: that depends on the machine, and <c>tests/node/practice/speed.mjs</c> measures it.</remarks>
public sealed class PracticePageInBrowserFacts(BrowserReport browser) : IClassFixture<BrowserReport>
{
    [Theory]
    [InlineData("100")]
    [InlineData("50")]
    [InlineData("150")]
    public void TheCursor_IsWithin15MillisecondsOfTheNoteThatSounds(string speed)
    {
        var ahead = Numbers(browser["cursor"].GetProperty("ahead").GetProperty(speed));
        Assert.True(ahead.Length >= 4, $"only {ahead.Length} notes were heard");
        Assert.All(ahead, milliseconds => Assert.InRange(milliseconds, -15, 15));
    }

    // The browser moves the line by itself: what the page says of it is held against what is drawn.
    [Theory]
    [InlineData("100")]
    [InlineData("50")]
    [InlineData("150")]
    public void TheCursor_IsDrawnWhereThePageSaysItIs(string speed)
    {
        var drawn = Numbers(browser["cursor"].GetProperty("drawn").GetProperty(speed));
        Assert.True(drawn.Length >= 10, $"only {drawn.Length} frames were seen");
        // A pixel is about 10 ms here, and notes are engraved to a thousandth of a space.
        Assert.All(drawn, milliseconds => Assert.InRange(milliseconds, -15, 15));
    }

    [Fact]
    public void TheCursor_StandsOnTheNoteThatWasClicked() =>
        Assert.All(Numbers(browser["cursor"].GetProperty("offset")), pixels => Assert.InRange(pixels, -1.5, 1.5));

    [Theory]
    [InlineData("100")]
    [InlineData("50")]
    public void ALoop_ComesAroundWithin2Milliseconds(string speed)
    {
        var late = Numbers(browser["loops"].GetProperty("late").GetProperty(speed));
        Assert.NotEmpty(late);
        Assert.All(late, milliseconds => Assert.InRange(milliseconds, -2, 2));
    }

    [Theory]
    [InlineData("100")]
    [InlineData("50")]
    public void APhraseIsCalled_ThenItsBarsAreLeftForTheAnswer_ThenComesTheNext(string speed)
    {
        var turns = browser["calls"].GetProperty(speed);
        var loud = Numbers(turns.GetProperty("loud"));
        Assert.True(loud[0] > 0.01, turns.ToString());
        // What is left is the other part's note dying away: 26 dB less.
        Assert.True(loud[1] < loud[0] / 20, turns.ToString());
        Assert.True(loud[2] > loud[0] / 10, turns.ToString());
        Assert.True(turns.GetProperty("backing").GetDouble() > loud[0] / 2, "the other part is not heard in the answer: " + turns);
    }

    [Theory]
    [InlineData("100")]
    [InlineData("50")]
    public void AnAnswer_HasExactlyAsLongAsItsPhrase(string speed)
    {
        var begins = Numbers(browser["calls"].GetProperty(speed).GetProperty("begins"));
        // The riff's eighths on each half second, then the other part's note on the first beat of the answer, and of the phrase after it.
        foreach (var expected in (double[])[-2, -1.5, -1, -0.5, 0, 2]) Assert.Contains(begins, at => Math.Abs(at - expected) < 0.03);
        Assert.DoesNotContain(begins, at => at is > 0.1 and < 1.9);
    }

    [Theory]
    [InlineData("called", "Listen: phrase 1 of", true)]
    [InlineData("answer", "Your turn: answer in bar", false)]
    [InlineData("next", "Listen: phrase 2 of", true)]
    public void WhoseTurnItIs_IsShownAndSaid_AndTheNeckShowsThePhraseOrTheWayAlone(string turn, string words, bool showsPhrase)
    {
        var seen = browser["calls"].GetProperty("100").GetProperty(turn);
        Assert.StartsWith(words, Assert.Single(Texts(seen.GetProperty("banner"))), StringComparison.Ordinal);
        Assert.Contains(words, seen.GetProperty("said").GetString(), StringComparison.Ordinal);
        Assert.Equal(showsPhrase, seen.GetProperty("onNeck").GetInt32() > 0);
        if (!showsPhrase) Assert.True(seen.GetProperty("scale").GetInt32() > 5, seen.ToString());
    }

    [Fact]
    public void CallAndResponse_GoesByKeysAlone()
    {
        var keys = browser["calls"].GetProperty("keys");
        Assert.StartsWith("Listen: phrase 1 of", Assert.Single(Texts(keys.GetProperty("on"))), StringComparison.Ordinal);
        Assert.StartsWith("Listen: phrase 2 of", Assert.Single(Texts(keys.GetProperty("next"))), StringComparison.Ordinal);
        Assert.StartsWith("Listen: phrase 1 of", Assert.Single(Texts(keys.GetProperty("home"))), StringComparison.Ordinal);
        // A loop ends it.
        Assert.Empty(Texts(keys.GetProperty("loop")));
        Assert.Empty(Texts(browser["calls"].GetProperty("errors")));
    }

    [Fact]
    public void HalfSpeed_KeepsThePitchWithin3Cents() =>
        Assert.InRange(CentsBetween(browser["pitch"].GetProperty("full").GetDouble(), browser["pitch"].GetProperty("half").GetDouble()), -3, 3);

    [Fact]
    public void ASemitoneUp_IsASemitone() =>
        Assert.InRange(CentsBetween(browser["pitch"].GetProperty("full").GetDouble(), browser["pitch"].GetProperty("up").GetDouble()), 97, 103);

    [Fact]
    public void AHundredLoops_LeaveMemoryAsItWas()
    {
        var memory = browser["memory"];
        Assert.InRange(memory.GetProperty("after").GetInt64() - memory.GetProperty("before").GetInt64(), long.MinValue, 1_000_000);
    }

    [Fact]
    public void AnIndependentReader_FindsNothingThatShutsPeopleOut_WithAllUnfoldedToo()
    {
        var report = browser["accessibility"];
        Assert.Empty(Texts(report.GetProperty("found")));
        Assert.Superset(new HashSet<string>(["String by string", "Note by note", "Elsewhere on the neck and in other keys", "Chords and scale, and why"]), Texts(report.GetProperty("unfolded")).ToHashSet());
    }

    [Fact]
    public void EveryControl_IsReachedByTheTabKey() => Assert.Empty(Texts(browser["keyboard"].GetProperty("unreached")));

    [Theory]
    [InlineData("Home", "Bar 1, Beats")]
    [InlineData("ArrowRight", "Bar 1, time 2, Beats")]
    [InlineData("ArrowLeft", "Bar 1, Beats")]
    [InlineData("Shift+ArrowRight", "Bar 2, Tone")]
    [InlineData("ArrowDown", "95 %")]
    [InlineData("ArrowUp", "100 %")]
    [InlineData("l", "true")]
    [InlineData("m", "true")]
    [InlineData("k", "true")]
    [InlineData("c", "false")]
    [InlineData("b", "Bar 1, beat 1, Beats")]
    [InlineData("?", "Help and settings")]
    [InlineData("Escape", "0")]
    [InlineData("space again", "stopped")]
    public void AKey_DoesWhatTheListSays(string key, string result) =>
        Assert.Equal(result, browser["keyboard"].GetProperty("did").GetProperty(key).ToString().Trim());

    [Fact]
    public void TextsThatTryToBreakOut_StandThereAsText()
    {
        var texts = browser["texts"];
        Assert.Equal(BrowserReport.HostileTitle, texts.GetProperty("title").GetString());
        Assert.Equal(BrowserReport.HostileTitle, texts.GetProperty("pageTitle").GetString());
        Assert.False(texts.GetProperty("broken").GetBoolean());
        Assert.Equal(0, texts.GetProperty("images").GetInt32());
        Assert.Empty(Texts(texts.GetProperty("errors")));
    }

    [Fact]
    public void OnPaper_ThereAreThePagesAlone() =>
        Assert.Equal([false, false, false, true], browser["texts"].GetProperty("printed").EnumerateArray().Select(seen => seen.GetBoolean()));

    [Fact]
    public void LoopsAndProgress_AreThereAtTheNextVisit()
    {
        Assert.Equal(1, browser["remembers"].GetProperty("loops").GetInt32());
        Assert.StartsWith("done", browser["remembers"].GetProperty("step").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("noAudio", "keeps time silently", true)]
    [InlineData("blocked", "keeps time silently", true)]
    [InlineData("noWorklet", "cannot keep the pitch", true)]
    [InlineData("brokenSound", "can't be read by this browser", false)]
    [InlineData("noMicrophone", "was not allowed", false)]
    public void ADeviceThatFails_IsSaidInWords_AndThePageStaysUsable(string trouble, string words, bool plays)
    {
        var seen = browser["troubles"].GetProperty(trouble);
        Assert.Contains(words, string.Concat(Texts(seen.GetProperty("said"))), StringComparison.Ordinal);
        if (plays) Assert.True(seen.GetProperty("place").GetDouble() > 0.5, seen.ToString());
    }

    [Fact]
    public void WithoutStorage_ThePagePlaysAllTheSame()
    {
        var seen = browser["troubles"].GetProperty("noStorage");
        Assert.Empty(Texts(seen.GetProperty("errors")));
        Assert.True(seen.GetProperty("place").GetDouble() > 0.5, seen.ToString());
    }

    [Fact]
    public void SoundThatIsTakenAway_StopsThePage_AndPlayGoesOnFromThere()
    {
        var taken = browser["troubles"].GetProperty("taken");
        Assert.Contains("took the sound away", string.Concat(Texts(taken.GetProperty("said"))), StringComparison.Ordinal);
        Assert.Equal("stopped", taken.GetProperty("state").GetString());
        Assert.Equal("playing", taken.GetProperty("again").GetProperty("state").GetString());
        Assert.True(taken.GetProperty("again").GetProperty("place").GetDouble() > taken.GetProperty("place").GetDouble(), taken.ToString());
    }

    [Fact]
    public void AFileDroppedBesideItsField_LeavesThePageWhereItIs_AndShowsTheField()
    {
        Assert.True(browser["troubles"].GetProperty("droppedBeside").GetBoolean());
        Assert.Equal("Recording", browser["troubles"].GetProperty("panelAfter").GetString());
    }

    [Theory]
    [InlineData("brokenFile", "can't be read as sound")]
    [InlineData("emptyFile", "is empty")]
    [InlineData("hugeFile", "takes 300 at most")]
    public void ARecordingThatIsNone_IsRefusedInWords(string file, string words) =>
        Assert.Contains(words, string.Concat(Texts(browser["troubles"].GetProperty(file))), StringComparison.Ordinal);

    [Fact]
    public void ARecording_LinedUpByTwoTaps_RunsWithTheCursor()
    {
        var take = browser["take"];
        Assert.Matches("Lined up by your taps at 2 bars, at 6[4-9] %", take.GetProperty("said").GetString());
        var off = Numbers(take.GetProperty("off"));
        Assert.NotEmpty(off);
        // The taps are as good as the machine that taps.
        Assert.All(off, milliseconds => Assert.InRange(milliseconds, -80, 80));
    }

    [Fact]
    public void ARecordingThatTheSheetLinesUp_RunsWithTheCursorWithoutATap()
    {
        var take = browser["sheetTake"];
        Assert.Contains("Lined up by the teacher at 2 bars, at 67 %", take.GetProperty("said").GetString(), StringComparison.Ordinal);
        var off = Numbers(take.GetProperty("off"));
        Assert.NotEmpty(off);
        Assert.All(off, milliseconds => Assert.InRange(milliseconds, -15, 15));
        Assert.Contains("Not lined up yet", take.GetProperty("other").GetString(), StringComparison.Ordinal);
        Assert.Contains("Its end comes before the last bar", take.GetProperty("told").GetString(), StringComparison.Ordinal);
    }

    private static double CentsBetween(double low, double high) => 1200 * Math.Log2(high / low);

    private static double[] Numbers(JsonElement array) => [.. array.EnumerateArray().Select(number => number.GetDouble())];

    private static string[] Texts(JsonElement array) => [.. array.EnumerateArray().Select(text => text.ToString())];
}
