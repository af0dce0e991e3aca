using System.Text;
using Fretlore.Exchange.Import;
using Fretlore.Exchange.Reports;
using Fretlore.Exchange.Sheets;
using Fretlore.Exchange.TextTab;
using Fretlore.Score;

namespace Fretlore.Tests.Exchange.TextTab;

/// <summary>Plain-text tab as people post it (all of it invented here): what is read, what is guessed, and that the guesses are said.</summary>
public sealed class TextTabReaderFacts
{
    private const string Posted = "Here's the riff from Copper Lintel, hope you like it!!\n" + PostedTab.LowRiff + """

        Chorus: let the chords ring

          Dm                Bb
        e|-1-------1-------|-1-------1-------||
        B|-3-------3-------|-3-------3-------||
        G|-2-------2-------|-3-------3-------||
        D|-0-------0-------|-3-------3-------||
        A|-----------------|-1-------1-------||
        D|-----------------|-----------------||
        """;

    [Fact]
    public void APostedTab_HasItsHead_ItsSections_ItsRepeats_AndARhythmFromItsSpacing()
    {
        var made = Read(Posted);
        var sheet = SheetWriter.Write(made.Song).Text;
        Assert.Contains("tuning  D2 A2 D3 G3 B3 E4\nmeter   4/4\ntempo   Q = 130\n", sheet, StringComparison.Ordinal);
        Assert.Contains("section Intro\n  guitar  times 2{ @6 E 0 0 @5 3 5 @4 3 5 @5 5 3 | 3 5 @4 5 7 @3 7 5 @4 7 5 | }\n", sheet, StringComparison.Ordinal);
        Assert.Contains("section Chorus\n  guitar  H [. . 0 2 3 1] [. . 0 2 3 1] | [. 1 3 3 3 1] [. 1 3 3 3 1]", sheet, StringComparison.Ordinal);
        Assert.Contains(made.Remarks, r => r.Line == 1 && r.Text.Contains("Here's the riff", StringComparison.Ordinal));
        Assert.Equal([TextFindingKind.RepeatTaken, TextFindingKind.MetreTaken, TextFindingKind.RhythmFromSpacing, TextFindingKind.RhythmFromSpacing], made.Findings.Select(f => f.Kind));
        Assert.Equal((7, 2), (made.Findings[0].Line, made.Findings[0].Column));
    }

    [Fact]
    public void Techniques_AreReadAsTheTradeTypesThem()
    {
        var notes = Bar("e|-5h7p5-7b9r7-7~-5/7-x-(5)-<12>-t12p5-7b-7\\--|").ToList();
        Assert.Equal(
            [
                "5 Picked", "7 HammerOn", "5 PullOff", "7 Picked +200-", "7 Picked ~", "5 Picked", "7 Glide", "0 Picked x", "5 Picked ?", "12 Picked *", "12 Tap", "5 PullOff", "7 Picked +200", "7 Picked Downwards",
            ],
            notes.Select(Told));
    }

    [Theory]
    [InlineData("e|--5h-7--5-h-7--|", "5 Picked;7 HammerOn;5 Picked;7 HammerOn")]
    [InlineData("e|--7b--7b1/2--7bfull--7^9--|", "7 Picked +200;7 Picked +100;7 Picked +200;7 Picked +200")]
    [InlineData("e|--/7--7/--5/--9--|", "7 Picked FromBelow;7 Picked Upwards;5 Picked;9 Glide")]
    [InlineData("e|--5s7--5S7--9r7--|", "5 Picked;7 Glide;5 Picked;7 PickedGlide;7 Picked +200-")]
    [InlineData("e|--o--X--12*--5v--|", "0 Picked;0 Picked x;12 Picked *;5 Picked ~")]
    [InlineData("e|--1012--|", "10 Picked;12 Picked")]
    public void WaysOfTyping_MeanTheSame(string line, string told) => Assert.Equal(told, string.Join(';', Bar(line).Select(Told)));

    [Theory]
    [InlineData("e|--333--|", TextFindingKind.DigitsParted)]
    [InlineData("e|--7b--|", TextFindingKind.BendTaken)]
    [InlineData("e|--o-2--|", TextFindingKind.LetterTakenForZero)]
    [InlineData("e|--5q--7-|", TextFindingKind.UnknownSign)]
    [InlineData("e|--35--0-|", TextFindingKind.DigitsParted)]
    public void AGuess_IsSaidWithItsPlace(string line, TextFindingKind kind)
    {
        var found = Assert.Single(Read(System(line)).Findings, f => f.Kind == kind);
        Assert.Equal(1, found.Line);
        Assert.InRange(found.Column, 4, 7);
    }

    [Theory]
    [InlineData("-")]
    [InlineData("=")]
    [InlineData("_")]
    [InlineData("–")]
    [InlineData("─")]
    public void AnyDash_IsADash(string dash) => Assert.Equal([0, 3, 5, 3], Frets(System("e|-0---3---5---3---|").Replace("-", dash, StringComparison.Ordinal)));

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\r")]
    [InlineData("\n\n")]
    [InlineData("\r\n\r\n")]
    public void LinesMayEndAsTheyLike_AndBeDoubleSpaced(string end) => Assert.Equal([0, 3, 5, 3], Frets(System("e|-0---3---5---3---|").Replace("\n", end, StringComparison.Ordinal)));

    [Fact]
    public void StringsWithoutNames_AreAUsualNeck()
    {
        var made = Read("-0---3---5---3---\n" + string.Join('\n', Enumerable.Repeat("-----------------", 5)));
        Assert.Equal("E2 A2 D3 G3 B3 E4", made.Song.Parts[0].Neck.Tuning.ToString());
        Assert.Contains(made.Findings, f => f.Kind == TextFindingKind.TuningTaken);
    }

    [Theory]
    [InlineData("G D A E", "E1 A1 D2 G2")]
    [InlineData("G D A E B", "B0 E1 A1 D2 G2")]
    [InlineData("e B G D A D", "D2 A2 D3 G3 B3 E4")]
    [InlineData("d a f# d a d", "D2 A2 D3 F#3 A3 D4")]
    [InlineData("E B G D A E B", "B1 E2 A2 D3 G3 B3 E4")]
    [InlineData("Eb Bb Gb Db Ab Eb", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4")]
    public void NamesOfStrings_AreATuningInTheUsualOctaves(string names, string tuning)
    {
        var lines = names.Split(' ').Select((n, i) => $"{n}|{(i == 0 ? "-0-2-" : "-----")}|");
        Assert.Equal(tuning, Read(string.Join('\n', lines)).Song.Parts[0].Neck.Tuning.ToString());
    }

    [Theory]
    [InlineData("Tuning: DADGAD", "D2 A2 D3 G3 A3 D4")]
    [InlineData("Tuning: C G D G B E", "C2 G2 D3 G3 B3 E4")]
    [InlineData("Tuning = Eb-Ab-Db-Gb-Bb-Eb", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4")]
    [InlineData("Tuning: Eb Ab Db Gb Bb Eb", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4")]
    [InlineData("Tuning: half step down", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4")]
    [InlineData("Drop C tuning", "C2 G2 C3 F3 A3 D4")]
    [InlineData("Standard tuning", "E2 A2 D3 G3 B3 E4")]
    public void ATuningInWords_IsRead(string line, string tuning) =>
        Assert.Equal(tuning, Read(line + "\n\n" + System("e|-0-2-|")).Song.Parts[0].Neck.Tuning.ToString());

    [Fact]
    public void SomeStringsOnly_AreThoseOfTheirNames()
    {
        var notes = Read("A|---2-2-|\nE|-0-----|").Song.Parts[0].Bars[0].Notes;
        Assert.Equal([(6, 0), (5, 2), (5, 2)], notes.Select(n => (n.String.Value, n.Fret.Number)));
    }

    [Theory]
    [InlineData("5-3", "2 on 5-3", new[] { 52, 67 }, TextFindingKind.FretBehindCapo)]
    [InlineData("strings 5-3", "2 on 5-3", new[] { 52, 67 }, TextFindingKind.FretBehindCapo)]
    [InlineData("9-7", "off", new[] { 50, 56, 67 }, TextFindingKind.CapoMisplaced)]
    public void ACapoOverSomeStrings_IsRead_AndWhatCantBeUnderItIsSaid(string strings, string capo, int[] heights, TextFindingKind said)
    {
        var made = Read($"Tuning: E2 A2 D3 G3 B3 E4\nCapo: 2 on {strings}\n\ne|--------3-|\nB|----------|\nG|-----1----|\nD|--0-------|\nA|----------|\nE|----------|\n");
        Assert.Equal(capo, made.Song.Parts[0].Neck.Capo.ToString());
        Assert.Equal(heights, made.Song.Parts[0].Bars.SelectMany(bar => bar.Notes).Select(note => note.Sounding.Midi));
        Assert.Contains(made.Findings, found => found.Kind == said);
    }

    [Fact]
    public void ATabUpsideDown_IsTurnedRound()
    {
        var made = Read("E|-0-----|\nA|---2---|\nD|-------|\nG|-------|\nB|-------|\ne|-----3-|");
        Assert.Equal([(6, 0), (5, 2), (1, 3)], made.Song.Parts[0].Bars[0].Notes.Select(n => (n.String.Value, n.Fret.Number)));
        Assert.Contains(made.Findings, f => f.Kind == TextFindingKind.UpsideDown);
    }

    [Fact]
    public void LinesBrokenInTwoByThePage_AreJoined()
    {
        var tab = "e|-0-2-3-5-\n-3-2-|\n" + string.Concat("BGDAE".Select(n => $"{n}|---------\n-----|\n"));
        Assert.Equal([0, 2, 3, 5, 3, 2], Frets(tab));
    }

    [Fact]
    public void FretsOfTwoDigitsWithoutRoomMadeForThem_DoNotShiftTheOthers()
    {
        var made = Read("e|-10-12-10-12-|\nB|-----------|\nG|-----------|\nD|-0-2-0-2-|\n".Replace("-0-2-0-2-|", "-0-2-0-2---|", StringComparison.Ordinal)
            .Replace("-10-12-10-12-|", "-10-12-10-12---|", StringComparison.Ordinal) + "A|-----------|\nE|-----------|");
        Assert.All(made.Song.Parts[0].Bars[0].Strands[0].Events, e => Assert.Equal(2, e.Notes.Count));
    }

    [Fact]
    public void WithoutBarLines_TheUsualDistanceIsAnEighth()
    {
        var made = Read(string.Join('\n', Enumerable.Repeat("---------------------------------", 5)) + "\n-0--2--3--0--2--3--0--2--3--0----");
        Assert.Equal(2, made.Song.Bars.Count);
        Assert.Equal("0 1/2 1 3/2 2 5/2 3 7/2", string.Join(' ', made.Song.Parts[0].Bars[0].Strands[0].Events.Select(e => e.Start)));
        Assert.Contains(made.Findings, f => f.Kind == TextFindingKind.BarLinesTaken);
    }

    [Theory]
    [InlineData("   1   2 & 3 e & a 4", "e|-0---2-4-5-5-5-5-7-|", "0 1 3/2 2 9/4 5/2 11/4 3")]
    [InlineData("   Q   E E S S S S Q", "e|-0---2-4-5-5-5-5-7-|", "0 1 3/2 2 9/4 5/2 11/4 3")]
    [InlineData("   Q. E H", "e|-0--2-4-|", "0 3/2 2")]
    [InlineData("   E:3 E:3 E:3 H.", "e|-0---2---4---5-|", "0 1/3 2/3 1")]
    public void ValuesOrBeatsAboveTheStrings_AreTaken(string above, string line, string starts)
    {
        var made = Read("Metre: 4/4\nTempo: 100\nTuning: E2 A2 D3 G3 B3 E4\n\n" + above + "\n" + System(line));
        Assert.Equal(starts, string.Join(' ', made.Song.Parts[0].Bars[0].Strands[0].Events.Where(e => !e.IsRest).Select(e => e.Start)));
        Assert.Empty(made.Findings);
    }

    [Fact]
    public void ValuesThatDoNotFillTheMetre_MakeABarOfTheirOwn()
    {
        var made = Read("   Q   Q   Q   Q     Q   Q   Q\n" + System("e|-0---2---3---5---|-0---2---3---|"));
        Assert.Equal("3/4", made.Song.Bars[1].Meter.ToString());
        Assert.Contains(made.Findings, f => f.Kind == TextFindingKind.BarLengthOdd);
    }

    [Fact]
    public void RepeatsEndingsAndChords_AreRead()
    {
        var made = Read("  1.---|  2.---|\n  Am9     G\n" + System("e|:-0-3--:|-5--3--:|-7-----||").Replace("e|:-0", "e|:-0", StringComparison.Ordinal));
        Assert.True(made.Song.Bars[0].StartsRepeat);
        Assert.Equal(2, made.Song.Bars[0].RepeatCount);
        Assert.Equal("Am9", made.Song.Parts[0].Bars[0].Strands[0].Events[0].ChordSymbol);
    }

    [Theory]
    [InlineData("")]
    [InlineData("Just words.\nAnd more of them.")]
    [InlineData("e|-----|\nB|-----|\nG|-----|\nD|-----|\nA|-----|\nE|-----|")]
    [InlineData("\0\0\0\0")]
    public void ATextWithoutTab_IsRefusedWithAReason(string text) =>
        Assert.NotEmpty(Assert.IsType<ImportResult.Refused>(TextTabReader.Read(Encoding.UTF8.GetBytes(text))).Reason);

    [Fact]
    public void OldEncodings_AreTaken_AndUtf16ByItsMark()
    {
        var text = "Title: Café\n" + System("e|-0-2-|");
        Assert.Equal("Café", MadeOf(Encoding.Latin1.GetBytes(text)).Song.Info.Title);
        Assert.Contains(MadeOf(Encoding.Latin1.GetBytes(text)).Findings, f => f.Kind == TextFindingKind.EncodingTaken);
        Assert.Equal("Café", MadeOf([0xFF, 0xFE, .. Encoding.Unicode.GetBytes(text)]).Song.Info.Title);
        Assert.Equal("Café", MadeOf([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(text)]).Song.Info.Title);
    }

    // A system whose top line is given, over five strings that rest.
    private static string System(string top) => top + "\n" + string.Join('\n', "BGDAE".Select(n => n + new string([.. top.Skip(1).Select(c => c is '|' or ':' or '-' or '=' ? c : '-')])));

    private static IEnumerable<Note> Bar(string line) => Read(System(line)).Song.Parts[0].Bars[0].Notes.Where(n => !n.IsTiedFromBefore);

    private static IEnumerable<int> Frets(string text) => Read(text).Song.Parts.SelectMany(p => p.Bars).SelectMany(b => b.Notes).Where(n => !n.IsTiedFromBefore).Select(n => n.Fret.Number);

    private static string Told(Note note) => $"{note.Fret} {note.Attack}" + (note.Bend is { } bend ? $" +{bend.PeakCents}{(bend.EndCents == 0 ? "-" : "")}" : "") + (note.Vibrato.Width != VibratoWidth.None ? " ~" : "")
        + (note.IsDead ? " x" : "") + (note.IsGhost ? " ?" : "") + (note.Harmonic is not null ? " *" : "") + (note.GlideIn != GlideIn.None ? " " + note.GlideIn : "") + (note.GlideOut != GlideOut.None ? " " + note.GlideOut : "");

    private static ImportResult.Made Read(string text) => MadeOf(Encoding.UTF8.GetBytes(text));

    private static ImportResult.Made MadeOf(byte[] file) => TextTabReader.Read(file) switch
    {
        ImportResult.Made made => made,
        ImportResult.Refused refused => throw new InvalidDataException(refused.Reason),
        _ => throw new InvalidOperationException(),
    };
}
