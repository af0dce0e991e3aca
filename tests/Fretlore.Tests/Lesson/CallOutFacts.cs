using CsCheck;
using Fretlore.Lesson.CallOuts;
using Fretlore.Lesson.CallOuts.ReadingBack;
using Fretlore.Music;
using Fretlore.Music.Chords;
using Fretlore.Reading;
using Fretlore.Score;

namespace Fretlore.Tests.Lesson;

public class CallOutFacts
{
    private const int LongestBreath = 20;

    [Theory]
    [InlineData(StringNaming.LowString)]
    [InlineData(StringNaming.Number)]
    [InlineData(StringNaming.Pitch)]
    public void EveryRealRiff_ReadBackFromItsWords_IsTheRiff(StringNaming naming)
    {
        var song = RealRiffs.Song;
        var style = new CallOutStyle(naming);
        foreach (var callOut in CallOutWriter.For(song, null, style)) Assert.Null(CallOutCheck.Problem(callOut, song, style));
    }

    [Fact]
    public void AnyRiff_ReadBackFromItsWords_IsTheRiff() =>
        Gen.Select(GeneratedRiffs.Any, Gen.Enum<StringNaming>()).Sample((riff, naming) =>
    {
        var song = RealRiffs.Song with { Riffs = [riff], Shapes = [] };
        var style = new CallOutStyle(naming);
        var callOut = CallOutWriter.For(song, null, style)[0];
        // Nothing had to be held back, or what is read here were not what was told.
        var problem = callOut.Caution ?? CallOutCheck.Problem(callOut, song, style);
        Assert.True(problem is null, $"{problem}\nH {callOut.Headline}\nW {callOut.WalkThrough}\nN {callOut.NoteByNote}");
    }, iter: 1000, print: _ => "a riff");

    [Fact]
    public void AnyRiff_IsToldInShortBreathsOfPlainWords() => GeneratedRiffs.Any.Sample(riff =>
    {
        var callOut = CallOutWriter.For(RealRiffs.Song with { Riffs = [riff], Shapes = [] })[0];
        foreach (var breath in callOut.Headline.Breaths.Concat(callOut.WalkThrough.Breaths).Concat(callOut.NoteByNote.Breaths))
        {
            Assert.Matches("^[A-Z][A-Za-z,: -]*\\.$", breath);
            Assert.DoesNotContain("  ", breath);
            Assert.True(breath.Split(' ').Length <= LongestBreath, breath);
        }
    }, iter: 1000, print: _ => "a riff");

    [Fact]
    public void AnyRiff_IsToldWithoutABreathInsideATuplet() => GeneratedRiffs.Any.Sample(riff =>
    {
        var cut = BreathsInTuplets(riff).FirstOrDefault();
        Assert.True(cut is null, cut);
    }, iter: 1000, print: _ => "a riff");

    [Fact]
    public void ATupletOverTwoStrings_IsToldInOneBreath() => Assert.Equal(
        "Third string, triplets: fret twelve, hammer to fourteen, then second string twelve. Hammer to thirteen, hammer to fifteen, first string twelve, then land on fifteen for two beats.",
        CallOutWriter.For(RealRiffs.Song with { Riffs = [new RiffBuilder("run").In("E", new Tuplet(3, 2, ValueBase.Eighth)).On(3).Play("12 h14").On(2).Play("12 h13 h15").On(1).Play("12").In("H").Play("15").Bar().Build()] })[0].WalkThrough.ToString());

    // Heard breath by breath: where the notes so far end inside a tuplet, the tuplet was begun by this very breath, for it fills one alone.
    private static IEnumerable<string> BreathsInTuplets(Riff riff)
    {
        var song = RealRiffs.Song with { Riffs = [riff], Shapes = [] };
        var told = CallOutWriter.For(song)[0].NoteByNote.Breaths;
        var strings = new Fretlore.Lesson.CallOuts.Words.StringWords(riff.Neck.Tuning, StringNaming.LowString);
        var before = (Bar: 0, Line: 0, Count: 0);
        for (var i = 0; i < told.Count; i++)
        {
            var heard = RiffReader.Read(new Speech([.. told.Take(i + 1)]), strings, _ => null, Detail.NoteByNote).Bars;
            if (heard.Count == 0 || heard[^1].Count == 0) continue;
            var now = (Bar: heard.Count - 1, Line: heard[^1].Count - 1, heard[^1][^1].Events.Count);
            var events = riff.Content[now.Bar].Strands[now.Line].Events;
            var (first, after) = TupletGroups.Of(events).FirstOrDefault(g => g.First < now.Count && now.Count < g.After);
            var from = (before.Bar, before.Line) == (now.Bar, now.Line) ? before.Count : 0;
            if (after > 0 && from < first) yield return $"{told[i]} | {(i + 1 < told.Count ? told[i + 1] : "")}";
            before = now;
        }
    }

    [Fact]
    public void AnyRiff_ToldWithWhatItsNotesAreToTheEar_IsStillTheRiff() => Gen.Select(GeneratedRiffs.Any, Roles).Sample((riff, role) =>
    {
        var song = RealRiffs.Song with { Riffs = [riff], Shapes = [] };
        // Notes of generated riffs have no ids, so that all have one role.
        var callOut = CallOutWriter.For(song, new SongReading([], [], [], []) { Roles = [role] })[0];
        Assert.Null(callOut.Caution ?? CallOutCheck.Problem(callOut, song));
        Assert.All(callOut.WalkThrough.Breaths, breath => Assert.True(breath.Split(' ').Length <= LongestBreath, breath));
    }, iter: 500, print: _ => "a riff and a role");

    [Fact]
    public void ALick_EndsWithWhatItsFirstAndLastNotesAndItsBendAreToTheEar()
    {
        var key = new Key(new NoteName(Step.A), Mode.Aeolian, true);
        var lick = new RiffBuilder("lick").On(2).In("Q").Play("8 10").Play("8", n => n with { Bend = new Bend(0, [200]) }).Play("5").Bar().On(3).In("W").Play("5").Bar().Build();
        var walk = Told(lick).WalkThrough.ToString();
        Assert.Contains("In the key, you start on the flat seventh and land on the minor third.", walk, StringComparison.Ordinal);
        Assert.Contains("The bend reaches the root of the key.", walk, StringComparison.Ordinal);
        Assert.DoesNotContain("In the key", Told(lick).NoteByNote.ToString(), StringComparison.Ordinal);

        CallOut Told(Riff riff)
        {
            var bars = riff.Bars.Select(b => b with { Key = key }).ToValueList();
            var id = 0;
            var content = riff.Content.Select(b => b with
            {
                Strands = b.Strands.Select(s => s with
                {
                    Events = s.Events.Select(e => e with { Notes = e.Notes.Select(n => n with { Id = new NoteId(id++) }).ToValueList() }).ToValueList(),
                }).ToValueList(),
            }).ToValueList();
            var song = RealRiffs.Song with
            {
                Riffs = [riff with { Bars = bars, Content = content }], Shapes = [], RiffUses = [], NoteCount = id, Bars = bars,
                Parts = [new Part { Name = "lead", Title = "Lead", Neck = riff.Neck, Bars = content }],
            };
            return CallOutWriter.For(song, SongReader.Read(song))[0];
        }
    }

    [Theory]
    [InlineData("You start on the squeak.")]
    [InlineData("You start on the root and land on the.")]
    [InlineData("The bend reaches ten.")]
    public void ASentenceAboutRolesThatWeWouldNotSay_IsCaught(string sentence)
    {
        var song = RealRiffs.Song;
        var callOut = CallOutWriter.For(song).First(c => c.Riff == "furnace");
        Assert.NotNull(CallOutCheck.Problem(callOut with { WalkThrough = new Speech([.. callOut.WalkThrough.Breaths, sentence]) }, song));
    }

    private static Gen<NoteRole> Roles => Gen.Select(Gen.Enum<RoleKind>(), Gen.Int[1, 13], Gen.OneOf(Gen.Const(""), Gen.Const("b"), Gen.Const("#")), Gen.Bool, (kind, number, sign, ofKey) =>
        new NoteRole(kind, Degree.Parse(sign + number), null, new NoteName(Step.G)) { IsOfKey = ofKey });

    [Theory]
    [InlineData("seven", "eight")]
    [InlineData("ten", "nine")]
    [InlineData("low three", "low two")]
    [InlineData("chugs", "dead notes")]
    [InlineData("hammer to", "slide up to")]
    [InlineData("Fifth", "Fourth")]
    [InlineData("Gallop", "Reverse gallop")]
    [InlineData("Eighths", "Quarters")]
    [InlineData("Bar two.", "")]
    [InlineData("then open", "then squeak")]
    public void CallOut_WithAWrongWord_IsCaught(string word, string wrong)
    {
        var song = RealRiffs.Song;
        var callOut = CallOutWriter.For(song).First(c => c.Riff == "furnace");
        var breaths = callOut.NoteByNote.Breaths.Select(b => b.Replace(word, wrong, StringComparison.Ordinal))
            .Where(b => b.Length > 0).ToArray();
        Assert.NotEqual(callOut.NoteByNote.Breaths, breaths);
        Assert.NotNull(CallOutCheck.Problem(callOut with { NoteByNote = new Speech([.. breaths]) }, song));
    }

    [Theory]
    [InlineData("low three", "low two")]
    [InlineData("One finger across", "Pairs on")]
    [InlineData("frets four to ten", "frets four to nine")]
    [InlineData("frets four to ten", "fret four")]
    [InlineData("the open strings", "the open string")]
    [InlineData(" and the open strings", "")]
    [InlineData("the gallops", "the gallop")]
    [InlineData("the palm mutes", "the taps")]
    [InlineData("the palm mutes", "the squeaks")]
    [InlineData("Two bars", "Three bars")]
    [InlineData("Two bars", "Two bars of six eight")]
    [InlineData("Two bars", "Two bars, four with the repeats")]
    public void Headline_ThatIsNotSo_IsCaught(string words, string wrong)
    {
        var song = RealRiffs.Song;
        var callOut = CallOutWriter.For(song).First(c => c.Riff == "furnace");
        var changed = callOut.Headline.Breaths.Select(b => b.Replace(words, wrong, StringComparison.Ordinal)).ToArray();
        Assert.NotEqual(callOut.Headline.Breaths, changed);
        Assert.Null(CallOutCheck.Problem(callOut, song));
        Assert.NotNull(CallOutCheck.Problem(callOut with { Headline = new Speech([.. changed]) }, song));
    }

    [Fact]
    public void CallOut_ThatIsNotItsRiff_IsNotSaid()
    {
        var song = RealRiffs.Song;
        var riff = song.Riffs.First(r => r.Name == "furnace");
        var told = CallOutWriter.For(song).First(c => c.Riff == "furnace");
        var wrong = new Speech(["Fret nine."]);
        Assert.Same(told, Proven(told));

        var walk = Proven(told with { WalkThrough = wrong });
        Assert.Equal(told.NoteByNote, walk.WalkThrough);
        Assert.Contains("note by note instead", walk.Caution, StringComparison.Ordinal);

        var both = Proven(told with { WalkThrough = wrong, NoteByNote = wrong });
        Assert.Equal("Read this one from the tab.", both.WalkThrough.ToString());
        Assert.Equal("Read this one from the tab.", both.NoteByNote.ToString());
        Assert.Contains("left to the tab", both.Caution, StringComparison.Ordinal);

        var headline = Proven(told with { Headline = new Speech([.. told.Headline.Breaths, "Mind the dog."]) });
        Assert.Equal(told.Headline, headline.Headline);
        Assert.Contains("Mind the dog", headline.Caution, StringComparison.Ordinal);

        CallOut Proven(CallOut callOut) => ProvenCallOut.Of(callOut, riff, CallOutContext.Of(song, null, new CallOutStyle()));
    }

    [Fact]
    public void OneFingerPowerChords_AreNamedByTheirStringsOnce() =>
        Tells(RealRiffs.IssueExample,
            "One finger across the low three strings, straight quarters: fret seven twice, open, then land on ten.");

    [Fact]
    public void PalmMutedGallops_AreChugs() => Tells(RealRiffs.Furnace,
        "Bar one. One finger across the low three strings: gallop on the open strings, palm-muted. Gallop: fret seven, then two chugs. "
        + "Eighths: ten, a chug, then seven for a beat. Bar two. Open, then eight. "
        + "Fifth string, sixteenths: four, hammer to six, pull off to four, then open. "
        + "Back across the low three strings, eighths: eight, seven, then rest for a beat.");

    [Fact]
    public void Variation_IsToldByWhatChanges() => Tells(RealRiffs.FurnaceTurn,
        "Same as the furnace riff, but bar two changes. Bar two. The lift shape, from the low string up: seven, seven, seven, nine. "
        + "Half notes: the lift shape, then move it up to eight.");

    [Fact]
    public void BarWithAnotherEnd_IsSameAgainButEndOn() => Tells(RealRiffs.ChugAndHit,
        "Bar one. Low string, straight eighths: two chugs, fret three, two chugs, five, a chug, then three. Bar two: same again, but end on six, then five.");

    [Fact]
    public void GallopsOnOneFret_AreCounted() => Tells(RealRiffs.FourGallops,
        "Bar one. One finger across the low two strings: two gallops on the open strings, palm-muted. Gallop on fret three, then gallop on five. "
        + "Bar two: same again, but end with a gallop on seven.");

    [Fact]
    public void GroupThatComesBack_IsDoThatTwice() => Tells(RealRiffs.OpenDrone,
        "First string, sixteenths: fret twelve, open, ten, then open. Do that twice. Eight, open, seven, open, five, open, seven, then open.");

    [Fact]
    public void LegatoRun_SaysWhichHandWorksAtEachNote() => Tells(RealRiffs.LegatoRun,
        "Third string, sixteenths: fret five, hammer to seven, hammer to nine, then pull off to seven. "
        + "Second string: five, hammer to six, hammer to eight, then pull off to six. "
        + "First string: five, hammer to seven, hammer to eight, then pull off to seven. Then slide up to twelve with vibrato for a beat.");

    [Fact]
    public void Bend_IsHeldAndLetDown() => Tells(RealRiffs.Bends,
        "Second string fret fifteen, bend it up a whole step for a beat. Let the bend down, then thirteen. "
        + "Then third string, land on fourteen, bend it up a half step with wide vibrato for two beats.");

    [Fact]
    public void Triplets_AreCalledByTheirName() => Tells(RealRiffs.Triplets,
        "Fourth string, triplets: fret five, hammer to seven, then pull off to five. Fifth string: seven, pull off to five, then open. "
        + "Low string: eight, pull off to seven, pull off to five, then land on three for a beat.");

    [Fact]
    public void PickedShape_IsHeldAndItsStringsCalled() => Tells(RealRiffs.PickedShape,
        "Bar one. The lantern shape, from the fifth string up: three, two, open, one, open. Let everything ring. "
        + "Hold the lantern shape, and pick straight eighths: fifth, third, second, third, first, third, second, then third. Bar two: same again.");

    [Fact]
    public void ShapeAlongTheNeck_IsMoved() => Tells(RealRiffs.MovedShapes,
        "Take this shape, from the low string up: five, seven, seven. Straight quarters: this shape twice, move it up to eight, then move it down to three.");

    private static readonly (string Name, int?[] Frets)[] Held =
        [("lift", [7, 7, 7, 9, null, null]), ("lantern", [null, 3, 2, 0, 1, 0]), ("gate", [3, null, 3, 4, 3, null])];

    private static Song WithHeldShapes(Riff riff) => RealRiffs.Song with
    {
        Riffs = [riff],
        Shapes = [.. Held.Select(s => new NamedShape(s.Name, new Guitar.Shape([.. s.Frets.Select(f => f is { } fret ? new Guitar.Fret(fret) : (Guitar.Fret?)null)]), riff.Neck))],
    };

    [Fact]
    public void BarOfAnotherShape_IsTheSameOneShapeOn()
    {
        var riff = new RiffBuilder().In("Q.EH").Shape("lift", Held[0].Frets).Shape("lift", Held[0].Frets).Shape("lift", Held[0].Frets).Bar()
            .Shape("lantern", Held[1].Frets).Shape("lantern", Held[1].Frets).Shape("lantern", Held[1].Frets).Bar()
            .In("W").Shape("lift", Held[0].Frets).Bar()
            .In("Q.EH").Shape("gate", Held[2].Frets).Shape("gate", Held[2].Frets).Shape("gate", Held[2].Frets).Bar().Build();
        Assert.Equal(
            "Bar one. The lift shape, from the low string up: seven, seven, seven, nine. The lift shape for a beat and a half, again, then again for two beats. "
            + "The lantern shape, from the fifth string up: three, two, open, one, open. Bar two: same again, but with the lantern shape. "
            + "Bar three. The lift shape for four beats. "
            + "The gate shape, from the low string up: three, skip one, three, four, three. Bar four: same as bar two, but with the gate shape.",
            CallOutWriter.For(WithHeldShapes(riff))[0].WalkThrough.ToString());
    }

    [Fact]
    public void BarOfTwoOtherShapes_IsTheSame_FirstWithTheOneThenWithTheOther()
    {
        var riff = new RiffBuilder().In("QEEH").Shape("lift", Held[0].Frets).Shape("lift", Held[0].Frets).Shape("lantern", Held[1].Frets).Shape("lift", Held[0].Frets).Bar()
            .Shape("gate", Held[2].Frets).Shape("gate", Held[2].Frets).Shape("lift", Held[0].Frets).Shape("gate", Held[2].Frets).Bar().Build();
        var callOut = CallOutWriter.For(WithHeldShapes(riff))[0];
        Assert.EndsWith("The gate shape, from the low string up: three, skip one, three, four, three. Bar two: same again, but first with the gate shape, then with the lift shape.",
            callOut.WalkThrough.ToString(), StringComparison.Ordinal);
        Assert.Null(callOut.Caution);
    }

    [Fact]
    public void BarsWithEachShapeOnce_AreTold_ForThatIsNoLonger()
    {
        var riff = new RiffBuilder().In("H").Shape("lift", Held[0].Frets).Shape("lantern", Held[1].Frets).Bar().Shape("gate", Held[2].Frets).Shape("lift", Held[0].Frets).Bar().Build();
        Assert.EndsWith("The gate shape, then the lift shape.", CallOutWriter.For(WithHeldShapes(riff))[0].WalkThrough.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void AnyBarsOfShapes_ReadBack_AreTheRiff() => Bars.List[2, 6].Sample(bars =>
    {
        var riff = bars.Aggregate(new RiffBuilder(), (builder, bar) => bar.Strikes.Aggregate(builder.In(bar.Values), (b, strike) => strike switch
        {
            < 0 => b.Play("R"),
            _ => b.Shape(Held[(bar.Shape + (bar.Mixed ? strike : 0)) % 3].Name, Held[(bar.Shape + (bar.Mixed ? strike : 0)) % 3].Frets)
                .Change(e => e with { Stroke = bar.Up && strike == 1 ? Stroke.Up : Stroke.None, Notes = [.. e.Notes.Select(n => n with { IsAccented = bar.Hard && strike == 0 })] }),
        }).Bar()).Build();
        var song = WithHeldShapes(riff);
        var callOut = CallOutWriter.For(song)[0];
        Assert.Null(callOut.Caution ?? CallOutCheck.Problem(callOut, song));
    }, iter: 500);

    private static Gen<(string Values, int[] Strikes, int Shape, bool Mixed, bool Up, bool Hard)> Bars => Gen.Select(
        Gen.OneOf(Gen.Const(("QQH", 3)), Gen.Const(("Q.EH", 3)), Gen.Const(("EEEEH", 5)), Gen.Const(("HH", 2))).SelectMany(v => Gen.Select(Gen.Const(v.Item1), Gen.Int[-1, 2].Array[v.Item2])),
        Gen.Int[0, 2], Gen.Frequency((4, Gen.Const(false)), (1, Gen.Const(true))), Gen.Bool, Gen.Bool, (v, shape, mixed, up, hard) => (v.Item1, v.Item2, shape, mixed, up, hard));

    [Fact]
    public void ShapeThatComesAgainInABar_IsNotNamedAgain()
    {
        var song = DemoCallOutFacts.Song("salt-furnace.lore");
        Assert.Contains("The ring A shape for a beat and a half, again, then again for two beats. Bar two. The ring A shape for two beats.",
            CallOutWriter.For(song).First(c => c.Riff == "harbour").WalkThrough.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Taps_AreToldOnceForFourTurns() => Tells(RealRiffs.Taps,
        "Second string, sixteenths: tap seventeen, pull off to ten, then hammer to thirteen. Do that four times. Tap seventeen, then fifteen.");

    [Fact]
    public void TwoLines_AreToldOneAfterTheOther() => Tells(RealRiffs.TwoLines,
        "The main line. Second string, straight eighths: fret three, five, three, open, three, five, seven, then five. "
        + "The bass underneath. Fifth string, half notes: open, then two.");

    [Fact]
    public void PinchAndHarmonic_AreCalledStringByString() => Tells(RealRiffs.Pinches,
        "Bar one. Straight eighths: fifth string open with the second string fret three, third string two, then second string three. "
        + "First string open, second string three, then third string two. "
        + "Bar two. Fifth string harmonic at twelve for three counts, then rest for three counts.");

    [Fact]
    public void HarmonicAcrossTheStrings_IsTheSameOnTheNext()
    {
        var song = DemoCallOutFacts.Song("lanterns-on-the-weir.lore");
        Assert.Contains("Fourth string, eighths: harmonic at twelve, third string the same, then second string the same. Then first string the same for three counts.",
            CallOutWriter.For(song).First(c => c.Riff == "lights").WalkThrough.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void FiveInTheTimeOfFour_AreQuintuplets()
    {
        var song = DemoCallOutFacts.Song("kestrel-over-slate.lore");
        Assert.Contains("Second string, sixteenth quintuplets: ten, hammer to eleven,", CallOutWriter.For(song).First(c => c.Riff == "cascade").WalkThrough.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(StringNaming.Number, "Sixth string, straight eighths: two chugs")]
    [InlineData(StringNaming.Pitch, "Low E string, straight eighths: two chugs")]
    public void Strings_AreCalledAsTheTeacherWants(StringNaming naming, string start)
    {
        var callOut = CallOutWriter.For(RealRiffs.Song, null, new CallOutStyle(naming)).First(c => c.Riff == "anvil");
        Assert.StartsWith("Bar one. " + start, callOut.WalkThrough.ToString());
    }

    [Fact]
    public void Headline_SaysWhereWhatAndHowLong() => Assert.Equal(
        "One finger across the low three strings, frets four to ten and the open strings. Listen for the gallops and the palm mutes. Two bars.",
        CallOutWriter.For(RealRiffs.Song).First(c => c.Riff == "furnace").Headline.ToString());

    private static void Tells(Riff riff, string words)
    {
        var callOut = CallOutWriter.For(RealRiffs.Song).First(c => c.Riff == riff.Name);
        Assert.Equal(words, callOut.WalkThrough.ToString());
    }
}
